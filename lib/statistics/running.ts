import { ok, type Result } from '../result';
import { refuse, type StatisticsError } from './error';

/** Mean and spread of values seen one after another, without keeping them (Welford 1962). */
export interface Running {
  readonly count: number;
  readonly mean: number;
  /** Sum of squared deviations from the mean. */
  readonly squares: number;
}

export const noneSeen: Running = { count: 0, mean: 0, squares: 0 };

/** One more value. Errors: no finite number, or sums beyond what a number holds; the state before stays good. */
export const see = (state: Running, value: number): Result<Running, StatisticsError> => {
  if (!Number.isFinite(value)) return refuse('notANumber', 'A value is no number.');
  const count = state.count + 1;
  const from = value - state.mean;
  const mean = state.mean + from / count;
  const squares = state.squares + from * (value - mean);
  return Number.isFinite(squares)
    ? ok({ count, mean, squares })
    : refuse('outOfDomain', 'A value is too large.');
};

/** All values at once. Errors as `see`. */
export const seeAll = (values: Iterable<number>): Result<Running, StatisticsError> => {
  let state = noneSeen;
  for (const value of values) {
    const next = see(state, value);
    if (!next.ok) return next;
    state = next.value;
  }
  return ok(state);
};

/** Sample standard deviation (n − 1). Error: fewer than two values. */
export const standardDeviation = ({ count, squares }: Running): Result<number, StatisticsError> =>
  count < 2
    ? refuse('tooFew', 'A spread needs at least two values.')
    : ok(Math.sqrt(Math.max(0, squares) / (count - 1)));
