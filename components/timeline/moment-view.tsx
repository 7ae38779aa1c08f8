import type { ReactNode } from 'react';
import type { ShownMoment } from '@/lib/timeline';
import { VerdictMark } from '../step/verdict-mark';
import { EventWords } from './event-row';

function Part({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <section className="flex flex-col">
      <h3 className="font-bold text-quiet">{title}</h3>
      {children}
    </section>
  );
}

function Lines({ lines, none }: { readonly lines: readonly string[]; readonly none: string }) {
  if (lines.length === 0) return <p>{none}</p>;
  return (
    <ul>
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}

const phaseWords = { running: 'At work', held: 'On hold', closed: 'Closed' } as const;

/** An event, and how the job stood right after it. */
export function MomentView({ shown: { row, moment } }: { readonly shown: ShownMoment }) {
  const { last, ends, stepsOpen } = moment;
  return (
    <div className="grid min-w-0 gap-x-8 gap-y-4 wide:grid-cols-3" data-moment={moment.seq}>
      <div className="flex min-w-0 flex-col gap-3">
        <section aria-label="This event" className="border-l-8 border-ink pl-4">
          <p>
            {row.day}, {row.clock}, {row.who}
          </p>
          <EventWords row={row} />
        </section>
        <Part title={`The job then, in ${moment.bay}`}>
          <p>
            <strong>
              {phaseWords[moment.phase]}
              {moment.hold === undefined ? '' : `: ${moment.hold}`}
            </strong>
          </p>
          <p>{moment.where}</p>
        </Part>
      </div>
      <div className="flex min-w-0 flex-col gap-3">
        <Part title="Last reading that stands">
          {last === undefined ? (
            <p>None yet</p>
          ) : (
            <p>
              {last.what}: <strong>{last.read}</strong>{' '}
              <VerdictMark verdict={last.verdict} className="ml-1" />
            </p>
          )}
        </Part>
        <Part title="Parts off the vehicle">
          <Lines lines={moment.partsOff} none="None" />
        </Part>
        <Part title="Fluids">
          <Lines
            lines={moment.fluids.map(({ name, stands }) => `${name}: ${stands}`)}
            none="The sheet has none"
          />
        </Part>
        {moment.trays.length === 0 ? null : (
          <Part title="In the trays">
            <Lines
              lines={moment.trays.map(({ tray, holds }) => `${tray}: ${holds.join(', ')}`)}
              none=""
            />
          </Part>
        )}
      </div>
      <Part title="Loose then">
        <Lines lines={moment.loose} none="Nothing out, off or loose" />
        <details open={ends.length > 0 && ends.length <= 6}>
          <summary className="min-h-[44px] cursor-pointer py-2">
            {ends.length === 1 ? '1 loose end' : `${ends.length} loose ends`} in the ledger,{' '}
            {stepsOpen === 1 ? '1 step' : `${stepsOpen} steps`} to do
          </summary>
          <ul>
            {ends.map(({ key, text, signedBy }) => (
              <li key={key}>
                {text}
                {signedBy === undefined ? null : (
                  <span className="text-quiet"> (signed by {signedBy})</span>
                )}
              </li>
            ))}
          </ul>
        </details>
      </Part>
    </div>
  );
}
