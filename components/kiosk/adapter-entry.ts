import { nominal, type Specification } from '@/lib/fastening';
import {
  setOnWrench,
  wrenchesForAdapter,
  type AdapterInUse,
  type SetOnWrench,
  type ToolCabinet,
  type WrenchForAdapter,
} from '@/lib/kiosk';

export const adapterFields = ['adapter', 'angle', 'wrench'] as const;
export type AdapterField = (typeof adapterFields)[number];

/** What was touched or typed so far. An id or an angle is one of the list; `typed` stands for the number beside it. */
export interface AdapterEntry {
  readonly adapter?: string;
  readonly angle?: string;
  readonly wrench?: string;
  readonly typed: Readonly<Record<AdapterField, string>>;
}

export const TYPED = 'typed';
export const emptyEntry: AdapterEntry = { typed: { adapter: '', angle: '', wrench: '' } };

/** Lengths by a rule and a hand on the mark of the grip, ± mm (common practice, no source). */
export const TYPED_WITHIN_MM = 2;

export interface ReadEntry {
  /** The shop's wrenches with this adapter on them; none before adapter and angle are known. */
  readonly wrenches: readonly WrenchForAdapter[];
  /** The wrench that is taken: as chosen, else the best of the shop's. */
  readonly wrench: string | undefined;
  readonly inUse: AdapterInUse | undefined;
  readonly set: SetOnWrench | undefined;
  /** Why these lengths cannot be used. */
  readonly problem: string | undefined;
}

const nothing = { wrenches: [], wrench: undefined, inUse: undefined, set: undefined } as const;

const numberOf = (text: string): number | undefined =>
  /\d/.test(text) && Number.isFinite(Number(text)) ? Number(text) : undefined;

/** The field to go on with after one was chosen from its list: the next that is still open. */
export const fieldAfter = (entry: AdapterEntry, field: AdapterField): AdapterField =>
  adapterFields.find((one) => one !== field && entry[one] === undefined) ?? field;

/** What an entry comes to for a torque of the sheet. `now` as RFC 3339. */
export const readEntry = (
  entry: AdapterEntry,
  specification: Specification,
  cabinet: ToolCabinet,
  now: string,
): ReadEntry => {
  const { typed } = entry;
  const known = cabinet.adapters?.find(({ id }) => id === entry.adapter);
  const adapterMm =
    known?.lengthMm ?? (entry.adapter === TYPED ? numberOf(typed.adapter) : undefined);
  const angleDeg = numberOf(entry.angle === TYPED ? typed.angle : (entry.angle ?? ''));
  const aim = nominal(specification);
  if (adapterMm === undefined || angleDeg === undefined || aim === undefined)
    return { ...nothing, problem: undefined };
  if (angleDeg > 180) return { ...nothing, problem: 'The angle is between 0° and 180°.' };
  const lever = {
    adapterMm,
    angleDeg,
    lengthsWithinMm: known?.lengthsWithinMm ?? TYPED_WITHIN_MM,
  };
  const wrenches = wrenchesForAdapter(aim, lever, known?.driveIn, cabinet, now);
  const wrench = entry.wrench ?? wrenches.find(({ admitted }) => admitted.ok)?.id;
  const tool = wrenches.find(({ id }) => id === wrench);
  const wrenchMm = tool?.lengthMm ?? (wrench === TYPED ? numberOf(typed.wrench) : undefined);
  if (wrenchMm === undefined || wrenchMm === 0)
    return { ...nothing, wrenches, wrench, problem: undefined };
  const inUse: AdapterInUse = {
    name: `${known?.name ?? `Adapter ${adapterMm} mm`} at ${angleDeg}°`,
    adapter: { ...lever, wrenchMm },
    ...(tool === undefined ? {} : { tool: tool.id }),
    ...(known === undefined ? {} : { driveIn: known.driveIn }),
  };
  const set = setOnWrench(specification, inUse);
  return set === undefined
    ? {
        ...nothing,
        wrenches,
        wrench,
        problem: `${adapterMm} mm turned back leave too little of a wrench of ${wrenchMm} mm.`,
      }
    : { wrenches, wrench, inUse, set, problem: undefined };
};
