import { quantityOf, unitFacts, type Quantity } from '../quantity';
import { doubtful, wrong, type Fault } from './fault';
import { toleranceInterval, type Specification } from './specification';

/** Of these nothing is below zero. Temperature, pressure (gauge) and voltage can be. */
const neverNegative: readonly Quantity[] = ['torque', 'volume'];
/** Seldom below zero: a protrusion is, where it stands back, and the camber of a wheel. */
const seldomNegative: readonly Quantity[] = ['length', 'angle'];

const figures = (spec: Specification): readonly number[] => {
  switch (spec.kind) {
    case 'target':
      return [spec.target, spec.tolerance.plus, spec.tolerance.minus];
    case 'range':
      return [spec.lower, spec.upper];
    case 'atLeast':
      return [spec.lower];
    case 'atMost':
      return [spec.upper];
    case 'noFigure':
      return [];
  }
};

/**
 * Whether a specification makes sense by itself, whatever it is for; empty when it does. A schema lets through any
 * number: this finds the limits that no reading could meet and the slips of typing.
 */
export const checkSpecification = (spec: Specification): readonly Fault[] => {
  if (!figures(spec).every(Number.isFinite)) {
    return [wrong('notFinite', 'A figure of the specification is not a number.')];
  }
  const interval = toleranceInterval(spec);
  if (interval === undefined) return [];
  const { lower, upper, target } = interval;
  const faults: Fault[] = [];
  const { symbol } = unitFacts[spec.unit];

  if (spec.kind === 'target' && spec.tolerance.in === 'percent') {
    const most = Math.max(spec.tolerance.plus, spec.tolerance.minus);
    if (most > 100) {
      faults.push(wrong('percentTooLarge', `A tolerance of ${most} % is more than the target.`));
    }
  }
  if (lower !== undefined && upper !== undefined && lower > upper) {
    faults.push(wrong('lowerAboveUpper', 'The lower limit is above the upper one.'));
  } else if (lower !== undefined && lower === upper) {
    faults.push(
      wrong('noWindow', 'The limits leave no window: no reading can be shown to be in it.'),
    );
  }
  if (
    target !== undefined &&
    (target < (lower ?? Number.NEGATIVE_INFINITY) || target > (upper ?? Number.POSITIVE_INFINITY))
  ) {
    faults.push(wrong('targetOutside', 'The target lies outside its own limits.'));
  }
  const least = lower ?? upper;
  if (least !== undefined && least < 0) {
    if (neverNegative.includes(quantityOf(spec.unit))) {
      faults.push(wrong('negative', `A limit in ${symbol} cannot be below zero.`));
    }
    if (seldomNegative.includes(quantityOf(spec.unit))) {
      faults.push(doubtful('negative', `A limit in ${symbol} is below zero: is that meant?`));
    }
  }
  return faults;
};
