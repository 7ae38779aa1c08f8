import type { ToleranceInterval } from '../fastening/specification';

/** What a reading says about its specification (decision rule of JCGM 106:2012 §8, ILAC-G8:09/2019 §4.2). */
export const verdicts = ['inSpec', 'notProvable', 'outOfSpec', 'noFigure'] as const;
export type Verdict = (typeof verdicts)[number];

/** How each is told, on every screen and on paper. */
export const verdictWords: Readonly<Record<Verdict, string>> = {
  inSpec: 'in spec',
  notProvable: 'not provable',
  outOfSpec: 'out of spec',
  noFigure: 'recorded, no figure given',
};

/** `mustProve` guards the limits by the expanded uncertainty; `simple` accepts the tolerance interval as it is. */
export type DecisionRule = 'simple' | 'mustProve';

/**
 * Where a reading must lie to be proven in: the tolerance interval drawn in by U (JCGM 106:2012 §8.3.2); canonical unit.
 * Undefined where the tool is too coarse to prove anything.
 */
export const provenInterval = (
  { lower, upper }: ToleranceInterval,
  expandedUncertainty: number,
): ToleranceInterval | undefined => {
  const drawn = {
    ...(lower === undefined ? {} : { lower: lower + expandedUncertainty }),
    ...(upper === undefined ? {} : { upper: upper - expandedUncertainty }),
  };
  const crossed = (drawn.lower ?? -Infinity) > (drawn.upper ?? Infinity);
  return crossed || !(expandedUncertainty >= 0) ? undefined : drawn;
};

/**
 * Judges one reading. All numbers in the same canonical unit; `expandedUncertainty` is U with k = 2.
 * Under `simple` a value on the limit is in spec. Under `mustProve` a value within U of a limit is not provable,
 * on either side of it, and an unknown uncertainty proves nothing. What is no finite number is out of spec.
 */
export const judge = (
  value: number,
  interval: ToleranceInterval | undefined,
  expandedUncertainty: number | undefined,
  rule: DecisionRule,
): Verdict => {
  if (interval === undefined) return 'noFigure';
  if (!Number.isFinite(value)) return 'outOfSpec';
  const lower = interval.lower ?? Number.NEGATIVE_INFINITY;
  const upper = interval.upper ?? Number.POSITIVE_INFINITY;
  const scale = Math.max(Math.abs(value), 1) * 1e-9; // decimals in another unit: a limit reached is reached
  const inside = value >= lower - scale && value <= upper + scale;
  if (rule === 'simple') return inside ? 'inSpec' : 'outOfSpec';
  if (expandedUncertainty === undefined || !(expandedUncertainty >= 0))
    return inside ? 'notProvable' : 'outOfSpec';
  const guard = expandedUncertainty;
  if (value >= lower + guard - scale && value <= upper - guard + scale) return 'inSpec';
  if (value < lower - guard - scale || value > upper + guard + scale) return 'outOfSpec';
  return 'notProvable';
};
