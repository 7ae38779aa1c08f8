import { ok, type Result } from '../result';
import { refuse, type StatisticsError } from './error';
import { noneSeen, see, type Running } from './running';

/** Control chart constants for ranges of two values (NIST/SEMATECH e-Handbook 6.3.2). */
const D2 = 1.128;
const D4 = 3.267;

/** Below this many points limits are a first guess (common practice, from memory). */
export const ENOUGH_POINTS = 20;

/** A chart in the making: what individuals and their moving ranges have been so far. */
export interface IndividualsSoFar {
  readonly values: Running;
  readonly rangeSum: number;
  readonly last: number;
}

export const noIndividuals: IndividualsSoFar = { values: noneSeen, rangeSum: 0, last: 0 };

/** One more value, in the order of time. Error: no finite number. */
export const chartValue = (
  soFar: IndividualsSoFar,
  value: number,
): Result<IndividualsSoFar, StatisticsError> => {
  const values = see(soFar.values, value);
  if (!values.ok) return values;
  const range = soFar.values.count === 0 ? 0 : Math.abs(value - soFar.last);
  return ok({ values: values.value, rangeSum: soFar.rangeSum + range, last: value });
};

export interface IndividualsLimits {
  readonly points: number;
  readonly centre: number;
  readonly averageMovingRange: number;
  /** Estimated from the moving ranges, so that a slow drift does not widen the limits. */
  readonly sigma: number;
  readonly lower: number;
  readonly upper: number;
  readonly movingRangeUpper: number;
  /** Fewer than twenty points: to look at, not to act on. */
  readonly preliminary: boolean;
}

/** Limits of the individuals and moving-range chart: x̄ ± 3·mR̄/1.128, and 3.267·mR̄. Error: fewer than two values. */
export const individualsLimits = (
  soFar: IndividualsSoFar,
): Result<IndividualsLimits, StatisticsError> => {
  const points = soFar.values.count;
  if (points < 2) return refuse('tooFew', 'A chart needs at least two values.');
  const centre = soFar.values.mean;
  const averageMovingRange = soFar.rangeSum / (points - 1);
  const sigma = averageMovingRange / D2;
  const limits = {
    points,
    centre,
    averageMovingRange,
    sigma,
    lower: centre - 3 * sigma,
    upper: centre + 3 * sigma,
    movingRangeUpper: D4 * averageMovingRange,
    preliminary: points < ENOUGH_POINTS,
  };
  return Number.isFinite(limits.movingRangeUpper)
    ? ok(limits)
    : refuse('outOfDomain', 'The values are too large.');
};

/** Limits of values in the order of time, in one pass. Errors: fewer than two, or one that is no finite number. */
export const individualsChart = (
  values: Iterable<number>,
): Result<IndividualsLimits, StatisticsError> => {
  let soFar = noIndividuals;
  for (const value of values) {
    const next = chartValue(soFar, value);
    if (!next.ok) return next;
    soFar = next.value;
  }
  return individualsLimits(soFar);
};
