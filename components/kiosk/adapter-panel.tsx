'use client';
import { useState } from 'react';
import { toleranceInterval, type Specification } from '@/lib/fastening';
import type { AdapterInUse, ToolCabinet } from '@/lib/kiosk';
import { bothTorques, digitsFor, formatQuantity, newtonMetres, type Limits } from '@/lib/quantity';
import { Button } from '../design/button';
import { NumberPad } from '../design/number-pad';
import { Panel } from '../design/panel';
import {
  adapterFields,
  emptyEntry,
  fieldAfter,
  readEntry,
  TYPED,
  type AdapterEntry,
  type AdapterField,
  type ReadEntry,
} from './adapter-entry';

const fieldNames: Readonly<Record<AdapterField, { name: string; pad: string; unit: string }>> = {
  adapter: { name: 'Adapter', pad: 'Square to fastener, mm', unit: 'mm' },
  angle: { name: 'Angle', pad: 'Between adapter and wrench, degrees', unit: '°' },
  wrench: { name: 'Wrench', pad: 'Square to hand mark, mm', unit: 'mm' },
};

interface Option {
  readonly value: string;
  readonly label: string;
  /** A second line: what it comes to, or why not. */
  readonly note?: string;
  readonly refused?: boolean;
}

const angles: readonly Option[] = [
  { value: '0', label: '0°', note: 'straight on: longer' },
  { value: '45', label: '45°' },
  { value: '90', label: '90°', note: 'square: no change' },
  { value: '135', label: '135°' },
  { value: '180', label: '180°', note: 'turned back: shorter' },
];

const optionsOf = (
  field: AdapterField,
  cabinet: ToolCabinet,
  read: ReadEntry,
  limits: Limits,
): readonly Option[] => {
  switch (field) {
    case 'adapter':
      return (cabinet.adapters ?? []).map(({ id, name, lengthMm }) => ({
        value: id,
        label: name,
        note: `${lengthMm} mm`,
      }));
    case 'angle':
      return angles;
    case 'wrench':
      return read.wrenches.map(({ id, name, lengthMm, setNm, admitted }) => ({
        value: id,
        label: name,
        note: admitted.ok
          ? `${lengthMm} mm, set ${formatQuantity(setNm, 'N.m', digitsFor(limits, 'N.m'))}`
          : admitted.error.message,
        refused: !admitted.ok,
      }));
  }
};

/** The list of one field, with the way to type it. */
function Options({
  field,
  options,
  chosen,
  onChoose,
}: {
  readonly field: AdapterField;
  readonly options: readonly Option[];
  readonly chosen: string | undefined;
  readonly onChoose: (value: string) => void;
}) {
  return (
    <div
      role="group"
      aria-label={fieldNames[field].name}
      className="grid auto-rows-min grid-cols-2 gap-3"
    >
      {[...options, { value: TYPED, label: 'Type it' }].map(
        ({ value, label, note, refused }: Option) => (
          <Button
            key={value}
            wide
            kind={value === chosen ? 'chosen' : 'plain'}
            pressed={value === chosen}
            disabled={refused === true}
            className="min-h-[6.4rem]"
            onPress={() => {
              onChoose(value);
            }}
          >
            <span className="block font-bold">{label}</span>
            {note === undefined ? null : <span className="block text-note">{note}</span>}
          </Button>
        ),
      )}
    </div>
  );
}

/** What to set, as soon as it is known, and how it comes about. */
function Result({ read }: { readonly read: ReadEntry }) {
  const { set, problem } = read;
  const torques = set && bothTorques(newtonMetres(set.torqueNm), set.window);
  return (
    <div role="status" aria-label="What to set" className="border-l-8 border-act pl-5">
      {set === undefined || torques === undefined ? (
        <p
          className={
            problem === undefined ? 'text-glance text-quiet' : 'text-glance font-bold text-bad'
          }
        >
          {problem ?? 'Choose the adapter, its angle and the wrench.'}
        </p>
      ) : (
        <>
          <p className="text-glance font-bold text-act">Set on the wrench</p>
          <p className="flex flex-wrap items-baseline gap-x-8 font-bold">
            <span className="text-figure whitespace-nowrap">{torques.newtonMetres}</span>
            <span className="text-read whitespace-nowrap">{torques.poundForceFeet}</span>
          </p>
          <p className="text-note">{set.explain}</p>
          <p className="text-note text-quiet">
            Lengths taken as known within ±{read.inUse?.adapter.lengthsWithinMm ?? 0} mm. Hold the
            wrench at its hand mark.
          </p>
        </>
      )}
    </div>
  );
}

export interface AdapterPanelProps {
  /** What is tightened. */
  readonly label: string;
  readonly specification: Specification;
  readonly cabinet: ToolCabinet;
  readonly inUse: AdapterInUse | undefined;
  /** RFC 3339. */
  readonly now: string;
  readonly onUse: (inUse: AdapterInUse | undefined, by: 'touch' | 'key') => void;
  readonly onClose: () => void;
}

/** A crowfoot or extension on the wrench: from the shop's list or typed, and what to set with it. */
export function AdapterPanel(props: AdapterPanelProps) {
  const { label, specification, cabinet, inUse, now, onUse, onClose } = props;
  const [entry, setEntry] = useState<AdapterEntry>(emptyEntry);
  const [field, setField] = useState<AdapterField>('adapter');
  const read = readEntry(entry, specification, cabinet, now);
  const options = (of: AdapterField): readonly Option[] =>
    optionsOf(of, cabinet, read, toleranceInterval(specification) ?? {});
  const chosen = { adapter: entry.adapter, angle: entry.angle, wrench: read.wrench };
  const shown = (of: AdapterField): string => {
    const { unit } = fieldNames[of];
    return chosen[of] === TYPED
      ? `${entry.typed[of] === '' ? '…' : entry.typed[of]} ${unit}`
      : (options(of).find(({ value }) => value === chosen[of])?.label ?? 'not chosen yet');
  };
  const use = (by: 'touch' | 'key') => (): void => {
    if (read.inUse !== undefined) onUse(read.inUse, by);
  };
  return (
    <Panel
      title={`Adapter on the wrench: ${label}`}
      onClose={onClose}
      actions={
        <>
          {inUse === undefined ? null : (
            <Button
              glyph="cross"
              onPress={() => {
                onUse(undefined, 'touch');
              }}
            >
              Without adapter
            </Button>
          )}
          <Button
            kind="main"
            glyph="tick"
            onPress={use('touch')}
            disabled={read.inUse === undefined}
          >
            Use this adapter
          </Button>
        </>
      }
    >
      <div className="grid gap-8 p-1 wide:grid-cols-[minmax(0,4fr)_minmax(0,3fr)]">
        <div className="flex flex-col gap-3">
          {adapterFields.map((of) => (
            <Button
              key={of}
              wide
              kind={of === field ? 'chosen' : 'plain'}
              pressed={of === field}
              className="justify-start! text-left"
              onPress={() => {
                setField(of);
              }}
            >
              <span className="inline-block w-[9rem] font-normal text-quiet">
                {fieldNames[of].name}
              </span>
              <span className="text-glance font-bold">{shown(of)}</span>
            </Button>
          ))}
          <Result read={read} />
        </div>
        {entry[field] === TYPED ? (
          <div className="flex items-start gap-5">
            <NumberPad
              label={fieldNames[field].pad}
              value={entry.typed[field]}
              onChange={(text) => {
                setEntry({ ...entry, typed: { ...entry.typed, [field]: text } });
              }}
              onEnter={use('key')}
              decimals
              most={6}
            />
            <div className="flex grow basis-0 flex-col gap-4">
              <p className="text-body">{fieldNames[field].pad}</p>
              <Button
                glyph="list"
                onPress={() => {
                  const { [field]: _typed, ...rest } = entry;
                  setEntry(rest);
                }}
              >
                From the list
              </Button>
            </div>
          </div>
        ) : (
          <Options
            field={field}
            options={options(field)}
            chosen={chosen[field]}
            onChoose={(value) => {
              const next = { ...entry, [field]: value };
              setEntry(next);
              if (value !== TYPED) setField(fieldAfter(next, field));
            }}
          />
        )}
      </div>
    </Panel>
  );
}
