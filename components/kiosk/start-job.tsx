'use client';
import { useState } from 'react';
import type { Vehicle } from '@/lib/shop';
import { parseSerial, serialText } from '@/lib/vehicle';
import { Button } from '../design/button';
import { Panel } from '../design/panel';
import { TextEntry } from '../design/text-entry';
import { PractiseButton } from './practise-button';
import { readSerial, SerialNote } from './serial-note';

/** A published procedure, as the choice shows it. */
export interface ProcedureChoice {
  readonly procedure: string;
  readonly revision: number;
  readonly title: string;
  readonly appliesTo: string;
  /** How many changes of its sheet a foreman has asked its writer for. */
  readonly changesAsked?: number | undefined;
}

/** Which procedure, on which vehicle. Opening a job pins the procedure's revision. */
export function StartJob({
  bay,
  procedures,
  problem,
  busy,
  onStart,
}: {
  readonly bay: string;
  readonly procedures: readonly ProcedureChoice[];
  readonly problem: string | undefined;
  readonly busy: boolean;
  readonly onStart: (
    choice: { readonly procedure: string; readonly revision: number },
    vehicle: Vehicle,
  ) => void;
}) {
  const [choice, setChoice] = useState<ProcedureChoice>();
  const [plate, setPlate] = useState('');
  const [description, setDescription] = useState('');
  const [serial, setSerial] = useState('');
  const [asRead, setAsRead] = useState(false);
  const reading = readSerial(serial, asRead);
  const complete = plate.trim() !== '' && reading?.error === undefined;
  const start = (): void => {
    if (choice === undefined || !complete || busy) return;
    const known = parseSerial(serial, asRead);
    const { procedure, revision } = choice;
    onStart(
      { procedure, revision },
      {
        plate: plate.trim(),
        description:
          description.trim() === '' ? choice.appliesTo.slice(0, 120) : description.trim(),
        ...(known.ok ? { serial: serialText(known.value) } : {}),
        ...(known.ok && asRead ? { serialAsRead: true as const } : {}),
      },
    );
  };
  return (
    <Panel
      whole
      title={choice === undefined ? `${bay}: which job?` : choice.title}
      actions={choice === undefined ? <PractiseButton /> : undefined}
    >
      {choice === undefined ? (
        <ul className="flex flex-col gap-4">
          {procedures.map((one) => (
            <li key={one.procedure}>
              <Button
                wide
                className="min-h-[8rem] justify-start text-left"
                onPress={() => {
                  setChoice(one);
                }}
              >
                <span className="block text-glance font-bold">{one.title}</span>
                <span className="text-body text-quiet">
                  {one.appliesTo} · revision {one.revision}
                  {one.changesAsked === undefined ? '' : ' · change of the sheet asked for'}
                </span>
              </Button>
            </li>
          ))}
        </ul>
      ) : (
        <div className="flex flex-col gap-6 pr-3">
          <p className="text-body text-quiet">
            For {choice.appliesTo}. Check that this is the vehicle.
          </p>
          <TextEntry
            label="Number plate"
            value={plate}
            onChange={setPlate}
            letters="plate"
            onEnter={start}
          />
          <div className="flex flex-col gap-2">
            <TextEntry
              label="VIN or other serial number (may stay empty)"
              value={serial}
              onChange={(text) => {
                setSerial(text);
                setAsRead(false);
              }}
              letters="plate"
              onEnter={start}
            />
            <SerialNote reading={reading} />
            {reading?.error?.kind === 'checkDigit' ? (
              <div>
                <Button
                  onPress={() => {
                    setAsRead(true);
                  }}
                >
                  Read twice: it stands so on the plate
                </Button>
              </div>
            ) : null}
          </div>
          <TextEntry
            label="Vehicle (may stay empty)"
            value={description}
            onChange={setDescription}
            onEnter={start}
          />
          <p role="alert" className="text-body font-bold text-bad">
            {problem}
          </p>
          <div className="flex gap-4">
            <Button
              glyph="back"
              onPress={() => {
                setChoice(undefined);
              }}
            >
              Another job
            </Button>
            <Button kind="main" glyph="play" onPress={start} disabled={busy || !complete}>
              Start
            </Button>
          </div>
        </div>
      )}
    </Panel>
  );
}
