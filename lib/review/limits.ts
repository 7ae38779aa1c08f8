import { fromCanonical, type Unit } from '../quantity';

/** What is accepted of a value; what is absent is not limited. */
export interface ValueLimits {
  readonly lower?: number;
  readonly upper?: number;
  readonly target?: number;
}

/** Of limits of which some may be unknown, those that are there. */
export const knownLimits = (limits: {
  readonly lower?: number | null | undefined;
  readonly upper?: number | null | undefined;
  readonly target?: number | null | undefined;
}): ValueLimits => ({
  ...(typeof limits.lower === 'number' ? { lower: limits.lower } : {}),
  ...(typeof limits.upper === 'number' ? { upper: limits.upper } : {}),
  ...(typeof limits.target === 'number' ? { target: limits.target } : {}),
});

/** The same limits, from the canonical unit, in another. */
export const limitsInUnit = ({ lower, upper, target }: ValueLimits, unit: Unit): ValueLimits => ({
  ...(lower === undefined ? {} : { lower: fromCanonical(lower, unit) }),
  ...(upper === undefined ? {} : { upper: fromCanonical(upper, unit) }),
  ...(target === undefined ? {} : { target: fromCanonical(target, unit) }),
});
