import type { Limits } from '../quantity';
import { ok, type Result } from '../result';
import { chiSquareQuantile } from './chi-square';
import { refuse, type StatisticsError } from './error';
import { normalQuantile } from './normal';
import { standardDeviation, type Running } from './running';

/** An estimate and the interval that holds the true value with the stated confidence. */
export interface Estimate {
  readonly value: number;
  readonly from: number;
  readonly to: number;
}

export interface Capability {
  /** Tolerance over six standard deviations; only where there are two limits. */
  readonly cp?: Estimate;
  /** Distance of the mean to the nearer limit over three standard deviations. */
  readonly cpk: Estimate;
}

/**
 * Capability of normally spread values against their limits (canonical unit).
 * Cp: exact interval by chi-square. Cpk: Ĉpk ± z·√(1/(9n) + Ĉpk²/(2(n−1))) (Bissell 1990; both in the NIST/SEMATECH
 * e-Handbook 6.1.6, from memory). Errors: fewer than two values, no spread, no limits, confidence not between 0 and 1.
 */
export const capability = (
  seen: Running,
  { lower, upper }: Limits,
  confidence = 0.95,
): Result<Capability, StatisticsError> => {
  const spread = standardDeviation(seen);
  if (!spread.ok) return spread;
  const s = spread.value;
  if (!(confidence > 0 && confidence < 1)) {
    return refuse('outOfDomain', 'A confidence is between 0 and 1.');
  }
  if (!(s > 0))
    return refuse('outOfDomain', 'All values are the same: there is no spread to judge.');
  const { count, mean } = seen;
  const distances = [
    ...(lower === undefined ? [] : [mean - lower]),
    ...(upper === undefined ? [] : [upper - mean]),
  ];
  if (distances.length === 0 || !distances.every(Number.isFinite)) {
    return refuse('outOfDomain', 'There is no limit to judge by.');
  }
  if (lower !== undefined && upper !== undefined && lower >= upper) {
    return refuse('outOfDomain', 'The lower limit does not lie below the upper one.');
  }
  const freedom = count - 1;
  const tail = (1 - confidence) / 2;

  const cpkValue = Math.min(...distances) / (3 * s);
  const half = -normalQuantile(tail) * Math.sqrt(1 / (9 * count) + cpkValue ** 2 / (2 * freedom));
  const cpk = { value: cpkValue, from: cpkValue - half, to: cpkValue + half };
  if (!Object.values(cpk).every(Number.isFinite)) {
    return refuse('outOfDomain', 'The spread is too small beside the limits.');
  }
  if (lower === undefined || upper === undefined) return ok({ cpk });

  const cpValue = (upper - lower) / (6 * s);
  const bound = (p: number): number => cpValue * Math.sqrt(chiSquareQuantile(p, freedom) / freedom);
  const cp = { value: cpValue, from: bound(tail), to: bound(1 - tail) };
  return Object.values(cp).every(Number.isFinite)
    ? ok({ cp, cpk })
    : refuse('outOfDomain', 'The spread is too small beside the limits.');
};
