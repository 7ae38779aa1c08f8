import {
  decimalPlaces,
  formatDecimal,
  placesOfStep,
  roundDecimal,
  wholePlaces,
  type Rounding,
} from './decimal';
import { fromCanonical, unitFacts, type Unit } from './unit';

/** Limits in the canonical unit of their quantity; a missing one is no limit on that side. */
export interface Limits {
  readonly lower?: number;
  readonly upper?: number;
  readonly target?: number;
}

/** No screen and no sheet of the trade needs more; beyond it lies the noise of conversion. */
const MOST_PLACES = 4;

const inPlaces = (places: number): number =>
  Math.min(MOST_PLACES, Math.max(0, wholePlaces(places)));

const withSymbol = (number: string, unit: Unit): string =>
  unit === 'deg' ? `${number}°` : `${number} ${unitFacts[unit].symbol}`;

/** A width or resolution (canonical) → the named unit: a difference, so an offset does not count. */
const step = (canonical: number, unit: Unit): number => canonical / unitFacts[unit].factor;

const decimalsOf = (canonical: number, unit: Unit): number => {
  const value = fromCanonical(canonical, unit);
  return value === 0
    ? 0
    : inPlaces(decimalPlaces(value, inPlaces(placesOfStep(Math.abs(value)) + 3)));
};

/**
 * Decimal places for a value of this specification shown in `unit`: fine enough for a tenth of the tolerance
 * (the ten-to-one rule of inspection; common practice, no source), never finer than `resolution` (canonical unit).
 * A single limit or a lone target is shown as it is written, with at most four significant digits.
 */
export const digitsFor = (limits: Limits, unit: Unit, resolution?: number): number => {
  const { lower, upper, target } = limits;
  const width = lower !== undefined && upper !== undefined ? step(upper - lower, unit) : 0;
  const single = lower ?? upper ?? target;
  const deserved =
    width > 0 && Number.isFinite(width)
      ? placesOfStep(width / 10)
      : single !== undefined && Number.isFinite(single)
        ? decimalsOf(single, unit)
        : 0;
  const resolved =
    resolution !== undefined && resolution > 0 && Number.isFinite(resolution)
      ? placesOfStep(step(resolution, unit))
      : MOST_PLACES;
  return inPlaces(Math.min(deserved, resolved));
};

/**
 * A canonical value in `unit` with its symbol: "120 N·m", "90°". Without `digits`, at most four significant digits.
 * What is no number is shown as a dash.
 */
export const formatQuantity = (
  canonical: number,
  unit: Unit,
  digits?: number,
  rounding?: Rounding,
): string =>
  withSymbol(
    formatDecimal(
      fromCanonical(canonical, unit),
      inPlaces(digits ?? decimalsOf(canonical, unit)),
      rounding,
    ),
    unit,
  );

/** A difference or an uncertainty (canonical) in `unit`, without the offset of a scale: 10 °C of it are 18 °F. */
export const formatDifference = (canonical: number, unit: Unit, digits: number): string =>
  withSymbol(formatDecimal(step(canonical, unit), inPlaces(digits)), unit);

const finite = (limit: number | undefined): number | undefined =>
  limit !== undefined && Number.isFinite(limit) ? limit : undefined;

/**
 * The accepted window in `unit`: "108–132 N·m", "at least 12.4 V", "at most 0.5 mm", "no figure".
 * Limits are rounded inwards: a value that the window shows as accepted is accepted. `digits` asks for other than the
 * places that the limits deserve, to tell a value from a limit close by.
 */
export const formatWindow = (limits: Limits | undefined, unit: Unit, digits?: number): string => {
  const lower = finite(limits?.lower);
  const upper = finite(limits?.upper);
  const most = inPlaces(digits ?? (limits === undefined ? 0 : digitsFor(limits, unit)));
  const places = Math.max(
    ...[lower, upper].map((limit) =>
      limit === undefined ? 0 : decimalPlaces(fromCanonical(limit, unit), most),
    ),
  );
  const shown = (canonical: number, rounding: Rounding): string =>
    formatDecimal(fromCanonical(canonical, unit), places, rounding);
  if (lower === undefined) {
    return upper === undefined ? 'no figure' : `at most ${withSymbol(shown(upper, 'down'), unit)}`;
  }
  if (upper === undefined) return `at least ${withSymbol(shown(lower, 'up'), unit)}`;
  const ends = [fromCanonical(lower, unit), fromCanonical(upper, unit)] as const;
  // Narrower than the last place: rounding inwards would turn the window inside out.
  const closes = roundDecimal(ends[0], places, 'up') > roundDecimal(ends[1], places, 'down');
  const from = shown(lower, closes ? 'nearest' : 'up');
  const to = shown(upper, closes ? 'nearest' : 'down');
  if (from === to) return withSymbol(from, unit);
  return withSymbol(`${from}${ends[0] < 0 ? ' to ' : '–'}${to}`, unit);
};
