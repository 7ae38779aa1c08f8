import { formatDecimal, decimalPlaces } from './decimal';
import { digitsFor, formatQuantity, type Limits } from './format';
import type { Measured } from './parse';
import { fromCanonical, quantityOf, toCanonical, unitFacts, unitSchema, type Unit } from './unit';

/** A likely slip behind a value that does not fit, and the value that was probably meant. */
export interface MixUp {
  readonly kind: 'otherUnit' | 'slippedDecimal';
  /** In the unit that was asked for. */
  readonly meant: Measured;
  /** "88 is the lbf·ft figure; 119 N·m?" */
  readonly text: string;
}

/** Seen on sheets, but rarely typed or said by mistake; asked last. */
const rare: readonly Unit[] = ['kgf.m', 'kgf.cm', 'cN.m', '[mil_i]', 'mV'];

const otherUnits = (unit: Unit): readonly Unit[] =>
  unitSchema.options.filter((other) => other !== unit && quantityOf(other) === quantityOf(unit));

/** Powers of ten to move the point by; one place is the likelier slip. */
const slips = [-1, 1, -2, 2] as const;

/**
 * What a value may have been meant as, when it does not fit its limits (canonical unit) but would in another unit
 * of the same quantity or with its decimal point moved; likeliest first. Empty when it fits, when nothing explains
 * it, or when a side has no limit (almost any slip would fit).
 */
export const nameMixUps = (value: number, unit: Unit, limits: Limits): readonly MixUp[] => {
  const { lower, upper } = limits;
  if (lower === undefined || upper === undefined || !Number.isFinite(value) || value === 0)
    return [];
  const slack = Math.max(Math.abs(lower), Math.abs(upper)) * 1e-9;
  const fits = (canonical: number): boolean =>
    canonical >= lower - slack && canonical <= upper + slack;
  if (fits(toCanonical(value, unit))) return [];

  const said = formatDecimal(value, decimalPlaces(value, 4));
  const asOther = (other: Unit): readonly MixUp[] => {
    const canonical = toCanonical(value, other);
    const inUnit = fromCanonical(canonical, unit);
    if (!fits(canonical) || !Number.isFinite(inUnit)) return [];
    const shown = formatQuantity(canonical, unit, digitsFor(limits, unit));
    return [
      {
        kind: 'otherUnit',
        meant: { value: inUnit, unit },
        text: `${said} is the ${unitFacts[other].symbol} figure; ${shown}?`,
      },
    ];
  };
  const slipped = slips.flatMap((power): readonly MixUp[] => {
    const meant = power < 0 ? value / 10 ** -power : value * 10 ** power;
    if (!Number.isFinite(meant) || !fits(toCanonical(meant, unit))) return [];
    const text = `${said}: is it ${formatDecimal(meant, decimalPlaces(meant, 4))}?`;
    return [{ kind: 'slippedDecimal', meant: { value: meant, unit }, text }];
  });
  const others = otherUnits(unit);
  return [
    ...others.filter((other) => !rare.includes(other)).flatMap(asOther),
    ...slipped,
    ...others.filter((other) => rare.includes(other)).flatMap(asOther),
  ];
};

/** The likeliest slip of `nameMixUps`, or undefined. */
export const nameMixUp = (value: number, unit: Unit, limits: Limits): MixUp | undefined =>
  nameMixUps(value, unit, limits)[0];
