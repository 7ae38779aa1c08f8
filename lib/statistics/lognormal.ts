import { normalCdf, normalQuantile } from './normal';

/** A time whose logarithm is normal: never below zero, with a long tail. `mu` is the logarithm of its median. */
export interface Lognormal {
  readonly mu: number;
  readonly sigma: number;
}

export interface Moments {
  readonly mean: number;
  readonly variance: number;
}

export const lognormalQuantile = ({ mu, sigma }: Lognormal, p: number): number =>
  Math.exp(mu + sigma * normalQuantile(p));

/** Below this the tail beyond what was spent is so thin that its ratios lose their digits. */
const THIN_TAIL = -6;

/**
 * Mean and variance of what remains of a time of which `spent` has passed and which is not over.
 * Closed form of the truncated lognormal; far in the tail the rest is taken as exponential with the hazard there.
 */
export const remaining = ({ mu, sigma }: Lognormal, spent: number): Moments => {
  const whole = Math.exp(mu + sigma ** 2 / 2);
  if (spent <= 0) return { mean: whole, variance: whole ** 2 * Math.expm1(sigma ** 2) };
  const a = (mu - Math.log(spent)) / sigma;
  if (a < THIN_TAIL) {
    const mean = (spent * sigma) / -a;
    return { mean, variance: mean ** 2 };
  }
  const stillRunning = normalCdf(a);
  const first = (whole * normalCdf(a + sigma)) / stillRunning;
  const second = (Math.exp(2 * mu + 2 * sigma ** 2) * normalCdf(a + 2 * sigma)) / stillRunning;
  return { mean: Math.max(0, first - spent), variance: Math.max(0, second - first ** 2) };
};

/** The lognormal with these moments (mean > 0): how sums of lognormal times are approximated (Fenton 1960). */
export const lognormalOf = ({ mean, variance }: Moments): Lognormal => {
  const square = Math.log1p(variance / mean ** 2);
  return { mu: Math.log(mean) - square / 2, sigma: Math.sqrt(square) };
};
