import type { Limits } from '../quantity';

export type Implausible = 'farTooHigh' | 'farTooLow';

/** What a value is compared with: the target, else the middle of the window, else its only limit. */
const reference = ({ lower, upper, target }: Limits): number | undefined => {
  if (target !== undefined) return target;
  if (lower !== undefined && upper !== undefined) return (lower + upper) / 2;
  return lower ?? upper;
};

/**
 * A value so far off that it is likelier misheard or mistyped than measured: over 3 × or under 1/3 of the target
 * (of the middle, or of the only limit, where there is no target). Canonical unit. Undefined where it is plausible
 * or nothing is known to compare with. Around zero, ratios mean nothing: there it is three times the larger limit.
 */
export const implausible = (value: number, limits: Limits | undefined): Implausible | undefined => {
  if (limits === undefined) return undefined;
  const middle = reference(limits);
  if (middle === undefined) return undefined;
  if (!Number.isFinite(value)) return value < 0 ? 'farTooLow' : 'farTooHigh';
  const around = Math.max(Math.abs(limits.lower ?? middle), Math.abs(limits.upper ?? middle));
  const spansZero = (limits.lower ?? middle) <= 0 && (limits.upper ?? middle) >= 0;
  const [least, most] = spansZero
    ? [-3 * around, 3 * around]
    : middle > 0
      ? [middle / 3, middle * 3]
      : [middle * 3, middle / 3];
  const slack = Math.abs(middle) * 1e-9;
  if (value > most + slack) return 'farTooHigh';
  if (value < least - slack) return 'farTooLow';
  return undefined;
};
