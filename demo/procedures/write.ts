import type { Specification } from '@/lib/fastening';
import type { Caution, Drawing, Fastener, Step } from '@/lib/procedure';
import type { Point } from './pen';
import type { Unit } from '@/lib/quantity';

/** A step with what most steps do not have left empty. */
export const step = (
  given: Pick<Step, 'id' | 'title' | 'instruction' | 'bookMinutes'> & Partial<Step>,
): Step => ({
  cautions: [],
  shows: [],
  oneShot: false,
  handStart: false,
  powerTool: 'notUsed',
  after: [],
  effects: [],
  asks: [],
  ...given,
});

export const caution = (
  signal: Caution['signal'],
  hazard: string,
  consequence: string,
  avoidance: string,
): Caution => ({ signal, hazard, consequence, avoidance });

/** A figure with the same tolerance up and down, in percent. */
export const percent = (target: number, unit: Unit, tolerance: number): Specification => ({
  kind: 'target',
  unit,
  target,
  tolerance: { in: 'percent', plus: tolerance, minus: tolerance },
});

export const plusMinus = (
  target: number,
  unit: Unit,
  plus: number,
  minus: number = plus,
): Specification => ({ kind: 'target', unit, target, tolerance: { in: 'unit', plus, minus } });

/** Holes named `prefix-1`, `prefix-2` … in the order given. */
export const holes = (
  prefix: string,
  diameterMm: number,
  points: readonly Point[],
): Drawing['holes'] =>
  points.map((point, index) => ({
    id: `${prefix}-${index + 1}`,
    xMm: Math.round(point.x * 10) / 10,
    yMm: Math.round(point.y * 10) / 10,
    diameterMm,
  }));

/** One fastener in each of those holes, labelled 1, 2 … and named like its hole. */
export const inHoles = (
  prefix: string,
  lengthsMm: readonly number[],
  singleUse: boolean,
): Fastener[] =>
  lengthsMm.map((lengthMm, index) => ({
    id: `${prefix}-${index + 1}`,
    label: String(index + 1),
    hole: `${prefix}-${index + 1}`,
    lengthMm,
    singleUse,
  }));
