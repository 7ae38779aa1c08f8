import { toleranceInterval, type Specification } from '../fastening/specification';
import type { Reason } from '../job/event';
import type { Reading } from '../job/state';
import { stepNumber, stepOf, type Fastener, type FastenerGroup, type Revision } from '../procedure';
import { fromCanonical, unitFacts, type Unit } from '../quantity';

/** A number as people write it: at most three decimals, none that say nothing. */
export const plain = (value: number): string => String(Number(value.toFixed(3)));

export const withUnit = (value: number, unit: Unit): string =>
  `${plain(value)} ${unitFacts[unit].symbol}`;

/** "71 N·m", or with an adapter "71 N·m on the wrench, 80 N·m at the fastener". */
export const readWords = ({ value, unit, canonical, adapter }: Reading): string => {
  const read = withUnit(value, unit);
  return adapter === undefined
    ? read
    : `${read} on the wrench, ${withUnit(fromCanonical(canonical, unit), unit)} at the fastener`;
};

/** "Asked: 9 to 11 N·m", in the unit of the sheet. */
export const asked = (spec: Specification): string => {
  const interval = toleranceInterval(spec);
  if (interval === undefined) return 'The sheet gives no figure';
  const { lower, upper } = interval;
  const inSheet = (canonical: number): number => fromCanonical(canonical, spec.unit);
  if (upper === undefined)
    return lower === undefined
      ? 'The sheet gives no figure'
      : `Asked: at least ${withUnit(inSheet(lower), spec.unit)}`;
  return lower === undefined
    ? `Asked: at most ${withUnit(inSheet(upper), spec.unit)}`
    : `Asked: ${plain(inSheet(lower))} to ${withUnit(inSheet(upper), spec.unit)}`;
};

/** "tray A", whether the sheet writes "A" or "Tray A". */
export const trayName = (tray: string): string =>
  /^tray\b/i.test(tray) ? `tray${tray.slice(4)}` : `tray ${tray}`;

/** "hole 3, 35 mm": where a fastener came from, and its length where lengths are told apart. */
export const origin = (fastener: Fastener): string =>
  [
    `hole ${fastener.label}`,
    ...(fastener.lengthMm === undefined ? [] : [`${plain(fastener.lengthMm)} mm`]),
  ].join(', ');

/** "Cover bolts: 1, 2, 3"; a lone fastener goes by its group. */
export const several = (group: FastenerGroup, fasteners: readonly Fastener[]): string =>
  group.fasteners.length === 1
    ? group.name
    : `${group.name} ${fasteners.map((fastener) => fastener.label).join(', ')}`;

export const atStep = (revision: Revision, id: string): string =>
  `step ${stepNumber(revision, id)}, ${stepOf(revision, id)?.title ?? id}`;

/** The words of a reason; a sound alone is said to be one. */
export const reasonWords = (reason: Reason | undefined): string | undefined =>
  reason === undefined ? undefined : (reason.text ?? 'Spoken note');
