const SQRT_PI = Math.sqrt(Math.PI);

/** erf by the series without alternating signs (Abramowitz & Stegun 7.1.6); for small |x|. */
const erfSeries = (x: number): number => {
  let term = x;
  let sum = x;
  for (let n = 1; Math.abs(term) > Math.abs(sum) * 1e-17; n += 1) {
    term *= (2 * x * x) / (2 * n + 1);
    sum += term;
  }
  return (2 / SQRT_PI) * Math.exp(-x * x) * sum;
};

/** erfc for x ≥ 2 by its continued fraction (Abramowitz & Stegun 7.1.14), worked from the far end. */
const erfcFraction = (x: number): number => {
  let below = x;
  for (let n = 60; n >= 1; n -= 1) below = x + n / 2 / below;
  return Math.exp(-x * x) / SQRT_PI / below;
};

const BORDER = 2;

/** Error function. */
export const erf = (x: number): number =>
  Math.abs(x) < BORDER ? erfSeries(x) : Math.sign(x) * (1 - erfcFraction(Math.abs(x)));

/** 1 − erf(x), exact to the last digits also where it is tiny. */
export const erfc = (x: number): number => {
  if (Math.abs(x) < BORDER) return 1 - erfSeries(x);
  return x > 0 ? erfcFraction(x) : 2 - erfcFraction(-x);
};

/** Probability that a standard normal value is at most z. z = ±∞ gives 1 and 0. */
export const normalCdf = (z: number): number => erfc(-z / Math.SQRT2) / 2;

const normalDensity = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);

/** First guess for small p: Abramowitz & Stegun 26.2.23, right to 4.5e-4. */
const roughUpper = (p: number): number => {
  const t = Math.sqrt(-2 * Math.log(p));
  const over = 2.515517 + t * (0.802853 + t * 0.010328);
  const under = 1 + t * (1.432788 + t * (0.189269 + t * 0.001308));
  return t - over / under;
};

/**
 * The z below which a standard normal value lies with probability p; p ≤ 0 gives −∞ and p ≥ 1 gives +∞.
 * The guess is sharpened by Halley's method on the lower tail, where digits are not lost.
 */
export const normalQuantile = (p: number): number => {
  if (p <= 0) return Number.NEGATIVE_INFINITY;
  if (p >= 1) return Number.POSITIVE_INFINITY;
  if (p > 0.5) return -normalQuantile(1 - p);
  let z = -roughUpper(p);
  for (let round = 0; round < 3; round += 1) {
    const density = normalDensity(z);
    if (density === 0) break;
    const step = (normalCdf(z) - p) / density;
    z -= step / (1 + (z * step) / 2);
  }
  return z;
};
