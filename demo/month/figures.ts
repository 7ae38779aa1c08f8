import { toleranceInterval, type Specification } from '@/lib/fastening';
import type { ValueAsk } from '@/lib/procedure';
import { fromCanonical, quantityOf } from '@/lib/quantity';
import { shareOf, type Chance } from './chance';

/** What bears on a reading beside chance. */
export interface Circumstances {
  readonly procedure: string;
  readonly ask: ValueAsk;
  readonly specification: Specification;
  readonly fastener: string | undefined;
  /** The torque tool in hand. */
  readonly tool: string | undefined;
  /** How far the month has gone, 0–1. */
  readonly month: number;
  /** Volumes read so far on this job, in the ask's own unit, by fluid. */
  readonly drained: ReadonlyMap<string, number>;
}

/** Smallest step that people read, by unit; 0.5 where nothing is said. */
const steps: Partial<Record<Specification['unit'], number>> = {
  mm: 0.01,
  L: 0.1,
  mL: 10,
  bar: 0.01,
  '[psi]': 0.5,
  Cel: 1,
  V: 0.01,
  mV: 1,
  deg: 1,
  '[lbf_av].[in_i]': 1,
};

const rounded = (value: number, step: number): number =>
  Number((Math.round(value / step) * step).toFixed(3));

const stepOfUnit = (specification: Specification, size: number): number =>
  quantityOf(specification.unit) === 'torque' && specification.unit !== '[lbf_av].[in_i]'
    ? size < 14
      ? 0.1
      : 0.5
    : (steps[specification.unit] ?? 0.5);

/** How far a tool is off, as a share: one spring tires over the month, one display was set anew in its middle. */
const toolBias = (tool: string | undefined, month: number): number => {
  if (tool === undefined) return 0;
  if (tool === 'tw-25') return -0.01 + 0.045 * month;
  if (tool === 'te-135') return month < 0.7 ? 0.004 : -0.012;
  return (shareOf(tool) - 0.5) * 0.02;
};

/** Each joint has a spread and a lean of its own: some holes are rough, some bolts sit badly for the arm. */
const jointSpread = (joint: string): number => 0.009 + 0.014 * shareOf(`spread ${joint}`);
const jointLean = (joint: string): number => (shareOf(`lean ${joint}`) - 0.5) * 0.022;

const torque = (target: number, given: Circumstances, dice: Chance): number => {
  const { ask, fastener, tool, month, procedure } = given;
  const joint = `${procedure} ${ask.id} ${fastener ?? ''}`;
  return (
    target * (1 + jointLean(joint) + toolBias(tool, month) + dice.normal(0, jointSpread(joint)))
  );
};

const inside = (lower: number, upper: number, dice: Chance): number =>
  Math.min(upper, Math.max(lower, dice.normal((lower + upper) / 2, (upper - lower) / 9)));

const volume = (given: Circumstances, dice: Chance): number | undefined => {
  const { of } = given.ask;
  if (of.kind !== 'fluid' || of.use === 'spilled' || of.use === 'returned') return undefined;
  const before = given.drained.get(of.fluid);
  const scale = given.specification.unit === 'mL' ? 100 : 1;
  if (of.use === 'filled' && before !== undefined) return before + dice.normal(0.06, 0.05) * scale;
  if (of.fluid === 'coolant') return dice.normal(8.35, 0.1);
  return of.fluid === 'oil' ? dice.normal(3.72, 0.07) : dice.normal(480, 15);
};

/** What would really be read, in the unit of the sheet, rounded as people read it. */
export const trueFigure = (given: Circumstances, dice: Chance): number => {
  const { specification } = given;
  const { unit } = specification;
  const limits = toleranceInterval(specification);
  const sheet = (canonical: number | undefined): number | undefined =>
    canonical === undefined ? undefined : fromCanonical(canonical, unit);
  const [lower, upper, target] = [limits?.lower, limits?.upper, limits?.target].map(sheet);
  const read =
    volume(given, dice) ??
    (target !== undefined && quantityOf(unit) === 'torque'
      ? torque(target, given, dice)
      : lower !== undefined && upper !== undefined
        ? inside(lower, upper, dice)
        : upper !== undefined
          ? upper * Math.min(0.98, Math.max(0.1, dice.normal(0.55, 0.14)))
          : lower !== undefined
            ? lower * (1 + Math.abs(dice.normal(0.03, 0.015)))
            : 1);
  return rounded(read, stepOfUnit(specification, Math.abs(target ?? read)));
};

/** A figure clearly outside what is asked; none where everything is accepted. */
export const strayFigure = (specification: Specification, dice: Chance): number | undefined => {
  const limits = toleranceInterval(specification);
  const edge = limits?.upper ?? limits?.lower;
  if (limits === undefined || edge === undefined) return undefined;
  const low = limits.lower !== undefined && (limits.upper === undefined || dice.is(0.6));
  const canonical = low
    ? (limits.lower ?? edge) * dice.between(0.9, 0.96)
    : edge * dice.between(1.04, 1.1);
  const stray = fromCanonical(canonical, specification.unit);
  return rounded(stray, stepOfUnit(specification, Math.abs(stray)));
};
