/**
 * Beyond this many significant digits a double shows the traces of its conversion, not the value:
 * 12.5 lbf·ft to N·m and back is 12.500000000000002.
 */
const SIGNIFICANT = 12;

const settled = (value: number): number => Number(value.toPrecision(SIGNIFICANT));

/** value × 10^power by moving the decimal point in the written number, so that 2.675 becomes 267.5 and not 267.499…. */
const shifted = (value: number, power: number): number => {
  const [digits = '0', exponent = '0'] = String(value).split('e');
  return Number(`${digits}e${String(Number(exponent) + power)}`);
};

export type Rounding = 'nearest' | 'up' | 'down';

const whole: Readonly<Record<Rounding, (value: number) => number>> = {
  // Halves away from zero: Math.round takes -2.5 to -2.
  nearest: (value) => Math.sign(value) * Math.round(Math.abs(value)),
  up: Math.ceil,
  down: Math.floor,
};

/** Places are a count between what a double can hold; what is no number counts as none. */
export const wholePlaces = (places: number): number =>
  Math.min(15, Math.max(-15, Math.round(places))) || 0;

/** From here on a double has no decimals left to round. */
const ALL_WHOLE = 1e15;

/**
 * Rounds in decimal terms: 2.675 to two places is 2.68, halves go away from zero.
 * `up` and `down` go towards +∞ and −∞, for limits that must not be widened by rounding. ±∞ and NaN stay as they are.
 */
export const roundDecimal = (
  value: number,
  places: number,
  rounding: Rounding = 'nearest',
): number =>
  Math.abs(value) < ALL_WHOLE
    ? shifted(whole[rounding](shifted(settled(value), wholePlaces(places))), -wholePlaces(places)) +
      0
    : value;

/** Decimal places the value is written with, at most `most`: 79.66 has 2, 130 has 0. */
export const decimalPlaces = (value: number, most: number): number => {
  for (let places = 0; places < most; places += 1) {
    if (roundDecimal(value, places) === settled(value)) return places;
  }
  return most;
};

/** Places (possibly negative) of the power of ten that is the largest not above `step`: 2.4 → 0, 0.24 → 1. */
export const placesOfStep = (step: number): number =>
  -Math.floor(Math.log10(settled(step)) + 1e-12);

/** A number as printed, with exactly `places` decimals and a true minus sign; what is no number is a dash. */
export const formatDecimal = (value: number, places: number, rounding?: Rounding): string => {
  if (!Number.isFinite(value)) return '–';
  const rounded = roundDecimal(value, places, rounding);
  return rounded.toFixed(Math.max(0, wholePlaces(places))).replace('-', '−');
};
