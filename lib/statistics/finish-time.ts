import { ok, type Result } from '../result';
import { refuse, type StatisticsError } from './error';
import { lognormalOf, lognormalQuantile, remaining, type Lognormal } from './lognormal';
import { normalQuantile } from './normal';
import { ENOUGH_RUNS, estimateTime, type Pace, type TimeEstimate } from './step-time';

/** A step still to be done, or the current one. */
export interface StepAhead {
  readonly bookMinutes: number;
  /** Times of earlier runs of this step, minutes; from five on they count instead of the book. */
  readonly history: readonly number[];
  /** Already spent on it now. */
  readonly spentMinutes?: number;
}

export interface FinishForecast {
  /** Even odds to be done by then. */
  readonly typicalMinutes: number;
  /** Four times in five it is done by then. */
  readonly safeMinutes: number;
  readonly from: 'history' | 'book' | 'both' | 'nothingLeft';
}

/** No step is known better than to a tenth, nor shorter than a second (assumptions). */
const LEAST_SIGMA = 0.1;
const LEAST_MINUTES = 1 / 60;
const Z80 = normalQuantile(0.8);

/** The lognormal time with this median and 80th percentile. */
const timeOf = ({ typical, slow }: TimeEstimate): Lognormal => {
  const median = Math.max(typical, LEAST_MINUTES);
  return {
    mu: Math.log(median),
    sigma: Math.max(LEAST_SIGMA, Math.log(Math.max(slow, median) / median) / Z80),
  };
};

const estimateFor = (step: StepAhead, pace: Pace): Result<TimeEstimate, StatisticsError> =>
  step.history.length >= ENOUGH_RUNS
    ? estimateTime(step.history)
    : ok({ typical: step.bookMinutes * pace.typical, slow: step.bookMinutes * pace.slow });

/**
 * When a running job is likely done, minutes from now: history first, book time × pace where there is none.
 * Each step's time is lognormal by its median and 80th percentile; the current one is known not to be over; the sum
 * is lognormal again by its moments (Fenton 1960), steps taken as independent.
 * Errors: times that are no numbers or below zero, a book time or pace not above zero.
 */
export const forecastFinish = (
  steps: readonly StepAhead[],
  pace: Pace,
): Result<FinishForecast, StatisticsError> => {
  if (!(pace.typical > 0 && pace.slow >= pace.typical && Number.isFinite(pace.slow))) {
    return refuse('outOfDomain', 'A pace is above zero, and the slow one not faster.');
  }
  let mean = 0;
  let variance = 0;
  let withHistory = 0;
  for (const step of steps) {
    const spent = step.spentMinutes ?? 0;
    if (!(step.bookMinutes > 0 && Number.isFinite(step.bookMinutes))) {
      return refuse('outOfDomain', 'A book time is above zero.');
    }
    if (!(spent >= 0 && Number.isFinite(spent))) {
      return refuse('outOfDomain', 'A time spent is not below zero.');
    }
    const estimate = estimateFor(step, pace);
    if (!estimate.ok) return estimate;
    if (step.history.length >= ENOUGH_RUNS) withHistory += 1;
    const rest = remaining(timeOf(estimate.value), spent);
    mean += rest.mean;
    variance += rest.variance;
  }
  if (steps.length === 0) return ok({ typicalMinutes: 0, safeMinutes: 0, from: 'nothingLeft' });
  const total = lognormalOf({ mean: Math.max(mean, LEAST_MINUTES), variance });
  const typicalMinutes = lognormalQuantile(total, 0.5);
  const safeMinutes = lognormalQuantile(total, 0.8);
  if (!Number.isFinite(typicalMinutes) || !Number.isFinite(safeMinutes)) {
    return refuse('outOfDomain', 'The times are too large.');
  }
  const from = withHistory === steps.length ? 'history' : withHistory === 0 ? 'book' : 'both';
  return ok({ typicalMinutes, safeMinutes, from });
};
