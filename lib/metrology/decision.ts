import type { Limits } from '../quantity';
import { err, ok, type Result } from '../result';
import { normalCdf } from '../statistics/normal';

/** The four outcomes of a guarded decision (ILAC-G8:09/2019 §4.2.3). */
export type Outcome = 'pass' | 'conditionalPass' | 'conditionalFail' | 'fail';

/** What follows for the work: proven in, proven out, or neither. */
export type Conclusion = 'accepted' | 'rejected' | 'notProvable';

/**
 * How far the limits are drawn in, as a multiple of the expanded uncertainty U (k = 2): w = r·U (ILAC-G8 table 1).
 * `none` is simple acceptance; `iso14253Default` leaves at most 5 % at the limit (ISO 14253-1:2017, from memory);
 * `expanded` is the full U of JCGM 106 §8.3 and of the earlier ISO 14253-1.
 */
export const guardBands = { none: 0, iso14253Default: 0.83, expanded: 1 } as const;
export type GuardBand = keyof typeof guardBands;

export interface Decision {
  readonly outcome: Outcome;
  readonly conclusion: Conclusion;
  /** The limits drawn in by the guard band; absent where it leaves nothing between them. */
  readonly acceptance?: Limits;
  /** Probability that the true value is within the limits, for a normal error (JCGM 106 §7). */
  readonly conformance: number;
  /** 1 − conformance, exact where it is small. */
  readonly risk: number;
}

export interface DecisionError {
  readonly kind: 'notANumber' | 'missingUncertainty' | 'noLimits' | 'limitsCrossed';
  readonly message: string;
}

const refuse = (kind: DecisionError['kind'], message: string): Result<never, DecisionError> =>
  err({ kind, message });

/** Probability that a true value scattered around `value` with standard uncertainty u lies beyond a limit. */
const beyond = (distance: number, u: number): number =>
  u === 0 ? (distance < 0 ? 1 : 0) : normalCdf(-distance / u);

/** A limit reached is reached: decimals that came through another unit may be off in the last digits. */
const slackOf = (value: number): number => Math.max(Math.abs(value), 1) * 1e-9;

/**
 * Judges a value against its limits, given the expanded uncertainty U (k = 2); all in one unit.
 * JCGM 106:2012 §7–8, ISO 14253-1, ILAC-G8:09/2019. Where w = 0 a value on a limit passes.
 * Errors: a value or limit that is no number, no limits, limits crossed, U missing or negative.
 */
export const decide = (
  value: number,
  limits: Limits | undefined,
  expandedUncertainty: number | undefined,
  guard: GuardBand,
): Result<Decision, DecisionError> => {
  if (!Number.isFinite(value)) return refuse('notANumber', 'The reading is no number.');
  const { lower, upper } = limits ?? {};
  if (lower === undefined && upper === undefined) {
    return refuse('noLimits', 'The sheet gives no figure to judge by.');
  }
  if ([lower, upper].some((limit) => limit !== undefined && !Number.isFinite(limit))) {
    return refuse('notANumber', 'A limit is no number.');
  }
  if (lower !== undefined && upper !== undefined && lower > upper) {
    return refuse('limitsCrossed', 'The lower limit lies above the upper one.');
  }
  if (expandedUncertainty === undefined) {
    return refuse('missingUncertainty', 'It is not known how far the tool may be off.');
  }
  if (!Number.isFinite(expandedUncertainty) || expandedUncertainty < 0) {
    return refuse('notANumber', 'An uncertainty is a number, and not below zero.');
  }

  const slack = slackOf(value);
  // Distances inwards from each limit; negative: beyond it.
  const above = lower === undefined ? Number.POSITIVE_INFINITY : value - lower;
  const under = upper === undefined ? Number.POSITIVE_INFINITY : upper - value;
  const room = Math.min(above, under);
  const w = guardBands[guard] * expandedUncertainty;
  const outcome: Outcome =
    room >= w - slack
      ? 'pass'
      : room >= -slack
        ? 'conditionalPass'
        : room >= -w - slack
          ? 'conditionalFail'
          : 'fail';

  const u = expandedUncertainty / 2;
  const risk = Math.min(1, beyond(above, u) + beyond(under, u));
  const drawnIn: Limits = {
    ...(lower === undefined ? {} : { lower: lower + w }),
    ...(upper === undefined ? {} : { upper: upper - w }),
  };
  const leaves = lower === undefined || upper === undefined || upper - lower >= 2 * w;
  return ok({
    outcome,
    conclusion: outcome === 'pass' ? 'accepted' : outcome === 'fail' ? 'rejected' : 'notProvable',
    ...(leaves ? { acceptance: drawnIn } : {}),
    conformance: 1 - risk,
    risk,
  });
};
