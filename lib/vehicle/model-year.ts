import type { Vin } from './vin';

/**
 * `one`: the year is certain. `either`: the code comes round every thirty years and nothing tells them apart.
 * `unknown`: the tenth character stands for no year.
 */
export type ModelYear =
  | { readonly kind: 'one'; readonly year: number }
  | { readonly kind: 'either'; readonly years: readonly [number, number] }
  | { readonly kind: 'unknown' };

/** Year codes from 1980 on (49 CFR 565.15 table VII, from memory): no I, O, Q, U, Z and no 0. */
const codes = 'ABCDEFGHJKLMNPRSTVWXY123456789';
const FIRST_ROUND = 1980;
const SECOND_ROUND = FIRST_ROUND + codes.length;

/**
 * The model year by the tenth character. On light vehicles for North America the seventh tells the round: a digit up
 * to 2009, a letter from 2010 (49 CFR 565.15(d), from memory). Elsewhere, and on heavy vehicles (over 10 000 lb,
 * motorcycles, trailers), it stays open; outside North America the tenth character need not be a year at all.
 */
export const modelYear = (vin: Vin, weight: 'light' | 'heavy' = 'light'): ModelYear => {
  const code = codes.indexOf(vin.text.charAt(9));
  if (code < 0) return { kind: 'unknown' };
  const years = [FIRST_ROUND + code, SECOND_ROUND + code] as const;
  if (!vin.checkDigitRequired || weight === 'heavy') return { kind: 'either', years };
  return { kind: 'one', year: /\d/.test(vin.text.charAt(6)) ? years[0] : years[1] };
};
