import { ok, type Result } from '../result';
import { refuse, type StatisticsError } from './error';
import { quantileOfSorted, sorted } from './quantile';

/** How long something takes: half the times at most `typical`, four in five at most `slow`. One outlier moves neither. */
export interface TimeEstimate {
  readonly typical: number;
  readonly slow: number;
}

/** With fewer runs than this the 80th percentile is just the longest or nearly so. */
export const ENOUGH_RUNS = 5;

/** Median and 80th percentile (type 7) of the times of one step, in their unit. Errors: none, no number, below zero. */
export const estimateTime = (
  times: readonly number[],
): Result<TimeEstimate & { readonly runs: number }, StatisticsError> => {
  const ordered = sorted(times);
  if (!ordered.ok) return ordered;
  if ((ordered.value[0] ?? 0) < 0) return refuse('outOfDomain', 'A time is not below zero.');
  const typical = quantileOfSorted(ordered.value, 0.5);
  if (!typical.ok) return typical;
  const slow = quantileOfSorted(ordered.value, 0.8);
  return slow.ok ? ok({ typical: typical.value, slow: slow.value, runs: times.length }) : slow;
};

/** Times against the book: half the steps take at most `typical` times their book time, four in five `slow` times. */
export type Pace = TimeEstimate;

/** Before anything was timed: the book is right, and one step in five takes half as long again (assumption). */
export const unknownPace: Pace = { typical: 1, slow: 1.5 };

/** The pace of steps done, from their times and book times; `unknownPace` below five. Error: no time or book time. */
export const paceOf = (
  done: readonly { readonly minutes: number; readonly bookMinutes: number }[],
): Result<Pace, StatisticsError> => {
  if (!done.every(({ bookMinutes }) => bookMinutes > 0)) {
    return refuse('outOfDomain', 'A book time is above zero.');
  }
  if (done.length < ENOUGH_RUNS) return ok(unknownPace);
  const pace = estimateTime(done.map(({ minutes, bookMinutes }) => minutes / bookMinutes));
  return pace.ok ? ok({ typical: pace.value.typical, slow: pace.value.slow }) : pace;
};
