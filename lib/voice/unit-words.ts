import type { Quantity, Unit } from '../quantity';
import type { PairSense } from './parse-number';

/** How units are spoken; the first of each is the one that the screen names. */
export const spokenUnits: readonly { readonly unit: Unit; readonly say: readonly string[] }[] = [
  { unit: 'N.m', say: ['newton meters', 'newton meter', 'newtons'] },
  { unit: '[lbf_av].[ft_i]', say: ['foot pounds', 'foot pound', 'pound feet', 'pound foot'] },
  { unit: '[lbf_av].[in_i]', say: ['inch pounds', 'inch pound', 'pound inches'] },
  { unit: 'deg', say: ['degrees', 'degree'] },
  { unit: 'mm', say: ['millimeters', 'millimeter'] },
  { unit: '[in_i]', say: ['inches', 'inch'] },
  { unit: '[mil_i]', say: ['thousandths', 'thou'] },
  { unit: 'L', say: ['liters', 'liter'] },
  { unit: 'mL', say: ['milliliters', 'milliliter'] },
  { unit: '[qt_us]', say: ['quarts', 'quart'] },
  { unit: '[foz_us]', say: ['fluid ounces', 'fluid ounce'] },
  { unit: '[pt_br]', say: ['pints', 'pint'] },
  { unit: 'kPa', say: ['kilopascals', 'kilopascal'] },
  { unit: 'bar', say: ['bar', 'bars'] },
  { unit: '[psi]', say: ['p s i'] },
  { unit: 'Cel', say: ['degrees celsius', 'celsius'] },
  { unit: '[degF]', say: ['degrees fahrenheit', 'fahrenheit'] },
  { unit: 'V', say: ['volts', 'volt'] },
];

const unitOf: ReadonlyMap<string, Unit> = new Map(
  spokenUnits.flatMap(({ unit, say }) => say.map((words) => [words, unit] as const)),
);

/** Splits a spoken unit off the end of the words. */
export const splitUnit = (
  words: readonly string[],
): { readonly number: readonly string[]; readonly unit?: Unit } => {
  for (const length of [3, 2, 1]) {
    const unit = unitOf.get(words.slice(-length).join(' '));
    if (unit !== undefined && words.length > length)
      return { number: words.slice(0, -length), unit };
  }
  return { number: words };
};

/** In these "two fifty" may also be 2.50. */
const decimalUnits: ReadonlySet<Unit> = new Set<Unit>([
  'kgf.m',
  'mm',
  '[in_i]',
  'L',
  '[qt_us]',
  '[pt_br]',
  'bar',
  'V',
]);
const decimalQuantities: ReadonlySet<Quantity> = new Set<Quantity>([
  'length',
  'volume',
  'pressure',
  'voltage',
]);

/** How "two fifty" is meant with this unit; without one, in an answer that measures this quantity. */
export const pairSense = (unit: Unit | undefined, quantity: Quantity | undefined): PairSense =>
  (
    unit === undefined
      ? quantity !== undefined && decimalQuantities.has(quantity)
      : decimalUnits.has(unit)
  )
    ? 'either'
    : 'whole';
