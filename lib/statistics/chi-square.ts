import { normalQuantile } from './normal';

/** ln Γ(x), x > 0: Stirling's series (Abramowitz & Stegun 6.1.41) after stepping up to where it holds. */
export const logGamma = (x: number): number => {
  let lift = 0;
  let y = x;
  while (y < 12) {
    lift += Math.log(y);
    y += 1;
  }
  const r = 1 / (y * y);
  const series = (1 / 12 - r * (1 / 360 - r * (1 / 1260 - r * (1 / 1680 - r / 1188)))) / y;
  return (y - 0.5) * Math.log(y) - y + Math.log(2 * Math.PI) / 2 + series - lift;
};

const MOST_TERMS = 5000;

/** Regularised lower incomplete gamma function P(a, x); a > 0, x ≥ 0 (Abramowitz & Stegun 6.5.29, 6.5.31). */
const lowerGamma = (a: number, x: number): number => {
  if (x <= 0) return 0;
  if (x === Number.POSITIVE_INFINITY) return 1;
  const front = Math.exp(a * Math.log(x) - x - logGamma(a));
  if (x < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let n = 1; n < MOST_TERMS && term > sum * 1e-17; n += 1) {
      term *= x / (a + n);
      sum += term;
    }
    return front * sum;
  }
  // Lentz's method on the continued fraction of the upper function.
  let b = x + 1 - a;
  let c = Number.MAX_VALUE;
  let d = 1 / b;
  let fraction = d;
  for (let n = 1; n < MOST_TERMS; n += 1) {
    const over = -n * (n - a);
    b += 2;
    d = 1 / (over * d + b);
    c = b + over / c;
    const factor = c * d;
    fraction *= factor;
    if (Math.abs(factor - 1) < 1e-16) break;
  }
  return 1 - front * fraction;
};

/** Probability that a chi-square value with `freedom` degrees (> 0) is at most x. */
export const chiSquareCdf = (x: number, freedom: number): number => lowerGamma(freedom / 2, x / 2);

/**
 * The x below which a chi-square value with `freedom` degrees (> 0) lies with probability p; 0 for p ≤ 0, ∞ for p ≥ 1.
 * Guess by Wilson and Hilferty's cube, then bisection: it cannot run away.
 */
export const chiSquareQuantile = (p: number, freedom: number): number => {
  if (p <= 0) return 0;
  if (p >= 1) return Number.POSITIVE_INFINITY;
  const share = 2 / (9 * freedom);
  const guess = freedom * Math.max(0.01, 1 - share + normalQuantile(p) * Math.sqrt(share)) ** 3;
  let low = guess;
  let high = guess;
  while (low > Number.MIN_VALUE && chiSquareCdf(low, freedom) > p) low /= 2;
  while (high < Number.MAX_VALUE / 2 && chiSquareCdf(high, freedom) < p) high *= 2;
  for (let round = 0; round < 200; round += 1) {
    const middle = low + (high - low) / 2;
    if (middle === low || middle === high) break;
    if (chiSquareCdf(middle, freedom) < p) low = middle;
    else high = middle;
  }
  return low + (high - low) / 2;
};
