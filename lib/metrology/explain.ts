import {
  decimalPlaces,
  digitsFor,
  formatDifference,
  formatQuantity,
  formatWindow,
  fromCanonical,
  roundDecimal,
  toCanonical,
  type Limits,
  type Measured,
  type Unit,
} from '../quantity';
import { judge, provenInterval, type DecisionRule, type Verdict } from './verdict';

export interface Explanation {
  readonly verdict: Verdict;
  /** One plain sentence for the screen. */
  readonly sentence: string;
}

/** Places at which a value inside the window is also seen to be inside it, limits being rounded inwards. */
const tellingPlaces = (value: number, limits: Limits, unit: Unit): number => {
  const seen = (places: number): boolean =>
    (limits.lower === undefined ||
      value >= roundDecimal(fromCanonical(limits.lower, unit), places, 'up')) &&
    (limits.upper === undefined ||
      value <= roundDecimal(fromCanonical(limits.upper, unit), places, 'down'));
  let places = digitsFor(limits, unit);
  while (places < 4 && !seen(places)) places += 1;
  return places;
};

/**
 * The verdict of `judge` on a reading, and why, in one sentence in the reading's own unit.
 * `limits` and `expandedUncertainty` (k = 2) are in the canonical unit.
 */
export const explainVerdict = (
  reading: Measured,
  limits: Limits | undefined,
  expandedUncertainty: number | undefined,
  rule: DecisionRule,
): Explanation => {
  const { value, unit } = reading;
  const canonical = toCanonical(value, unit);
  const verdict = judge(canonical, limits, expandedUncertainty, rule);
  const shown = formatQuantity(canonical, unit, decimalPlaces(value, 4));
  const say = (sentence: string): Explanation => ({ verdict, sentence });
  if (limits === undefined)
    return say(`The sheet gives no figure: ${shown} is recorded, not judged.`);

  const short = limits.lower !== undefined && canonical < limits.lower;
  const inside = judge(canonical, limits, undefined, 'simple') === 'inSpec';
  const places = inside ? tellingPlaces(value, limits, unit) : digitsFor(limits, unit);
  const window = formatWindow(limits, unit, places);
  const broken = short ? limits.lower : limits.upper;
  const finest = Math.max(places, decimalPlaces(value, 4));
  const inwards = short ? 'up' : 'down';
  const limitPlaces = broken === undefined ? 0 : decimalPlaces(fromCanonical(broken, unit), finest);
  const limit = broken === undefined ? '' : formatQuantity(broken, unit, limitPlaces, inwards);
  // From the limit as it is shown: "160 is below 170" is out by 10, though the limit be 169.2.
  const beyond =
    broken === undefined || !Number.isFinite(canonical)
      ? undefined
      : Math.abs(
          canonical -
            toCanonical(roundDecimal(fromCanonical(broken, unit), limitPlaces, inwards), unit),
        );
  const side = short ? 'below' : 'above';
  const isWithin = window.startsWith('at ') ? `is ${window}` : `is within ${window}`;
  const doubt =
    expandedUncertainty === undefined
      ? ''
      : `±${formatDifference(expandedUncertainty, unit, places + 1)}`;

  switch (verdict) {
    case 'inSpec':
      return say(
        rule === 'mustProve' && doubt !== ''
          ? `${shown} ${isWithin}, and stays so with the tool’s ${doubt}.`
          : `${shown} ${isWithin}.`,
      );
    case 'outOfSpec':
      return say(
        beyond === undefined
          ? `${shown} is out of spec: ${window}.`
          : `${shown} is ${side} ${limit}, out of spec by ${formatDifference(beyond, unit, finest)}.`,
      );
    case 'notProvable': {
      if (doubt === '' || expandedUncertainty === undefined) {
        return say(`${shown} ${isWithin}, but it is not known how far the tool may be off.`);
      }
      if (!inside) {
        return say(`${shown} is ${side} ${limit}, by less than the tool’s ${doubt} can prove.`);
      }
      const zone = provenInterval(limits, expandedUncertainty);
      return say(
        zone === undefined
          ? `${shown} ${isWithin}, but the tool’s ${doubt} is too coarse to prove it.`
          : `${shown} ${isWithin}, but the tool’s ${doubt} proves only ${formatWindow(zone, unit, places + 1)}.`,
      );
    }
    case 'noFigure':
      return say(`${shown} is recorded, not judged.`);
  }
};
