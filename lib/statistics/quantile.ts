import { ok, type Result } from '../result';
import { refuse, type StatisticsError } from './error';

/** Values in order. Errors: none, or one that is no finite number. */
export const sorted = (values: readonly number[]): Result<readonly number[], StatisticsError> => {
  if (values.length === 0) return refuse('tooFew', 'There are no values yet.');
  if (!values.every(Number.isFinite)) return refuse('notANumber', 'A value is no number.');
  return ok([...values].sort((a, b) => a - b));
};

/**
 * The value below which a share p of ordered values lies: type 7 of Hyndman and Fan (1996), linear between the ranks
 * (n − 1)p, which spreadsheets use as well. Errors: no values, p outside 0–1.
 */
export const quantileOfSorted = (
  ordered: readonly number[],
  p: number,
): Result<number, StatisticsError> => {
  if (!(p >= 0 && p <= 1)) return refuse('outOfDomain', 'A share is between 0 and 1.');
  const rank = (ordered.length - 1) * p;
  const below = ordered[Math.floor(rank)];
  const above = ordered[Math.ceil(rank)];
  if (below === undefined || above === undefined) {
    return refuse('tooFew', 'There are no values yet.');
  }
  const part = rank - Math.floor(rank);
  // Weighted, since the difference of two large values can be beyond what a number holds.
  return ok(below === above ? below : below * (1 - part) + above * part);
};

/** As `quantileOfSorted`, of values in any order. */
export const quantile = (values: readonly number[], p: number): Result<number, StatisticsError> => {
  const ordered = sorted(values);
  return ordered.ok ? quantileOfSorted(ordered.value, p) : ordered;
};
