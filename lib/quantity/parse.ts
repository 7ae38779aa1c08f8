import { err, ok, type Result } from '../result';
import { parseNumber, type NumberProblem } from './parse-number';
import { quantityOf, unitFacts, unitSchema, type Quantity, type Unit } from './unit';

/** A value as somebody stated it, in the unit they used. */
export interface Measured {
  readonly value: number;
  readonly unit: Unit;
}

export interface ParseProblem {
  readonly kind: NumberProblem['kind'] | 'unknownUnit' | 'unitMissing' | 'wrongQuantity';
  /** What is wrong and what to type instead. */
  readonly message: string;
}

/** What is expected in a field: the quantity, and the unit that a bare number is in. */
export interface Expected {
  readonly quantity?: Quantity;
  readonly unit?: Unit;
}

/** What people type, in lower case without blanks, dots and hyphens: "ft-lbs" and "ft lbs" are `ftlbs`. */
const spellings: Readonly<Record<Unit, readonly string[]>> = {
  'N.m': ['nm', 'newtonmetre', 'newtonmetres', 'newtonmeter', 'newtonmeters'],
  'cN.m': ['cnm', 'ncm', 'newtoncentimetres', 'newtoncentimeters'],
  '[lbf_av].[ft_i]': [
    ...['lbft', 'lbsft', 'lbfft', 'ftlb', 'ftlbs', 'ftlbf', 'lb/ft', 'ft/lb', 'ft/lbs'],
    ...['footpound', 'footpounds', 'poundfoot', 'poundfeet', 'poundsfeet'],
  ],
  '[lbf_av].[in_i]': [
    ...['lbin', 'lbsin', 'lbfin', 'inlb', 'inlbs', 'inlbf'],
    ...['inchpound', 'inchpounds', 'poundinch', 'poundinches'],
  ],
  'kgf.m': ['kgfm', 'kgm', 'mkg', 'mkgf', 'mkp', 'kpm'],
  'kgf.cm': ['kgfcm', 'kgcm', 'cmkg', 'cmkgf'],
  deg: ['°', 'deg', 'degree', 'degrees', 'º'],
  mm: ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'],
  '[in_i]': ['in', 'inch', 'inches', '"', '″', '”'],
  '[mil_i]': ['thou', 'mil', 'mils', 'thousandth', 'thousandths'],
  L: ['l', 'litre', 'litres', 'liter', 'liters', 'ltr'],
  mL: ['ml', 'millilitre', 'millilitres', 'milliliter', 'milliliters'],
  '[qt_us]': ['usqt', 'usqts', 'usquart', 'usquarts', 'qtus'],
  '[foz_us]': ['usfloz', 'usfluidounce', 'usfluidounces'],
  '[pt_br]': ['imppt', 'imppint', 'imppints', 'imperialpint', 'imperialpints', 'ukpt', 'ukpint'],
  kPa: ['kpa', 'kilopascal', 'kilopascals'],
  bar: ['bar', 'bars'],
  '[psi]': ['psi', 'psig', 'lbf/in2', 'lbf/in²', 'lb/in2', 'lb/in²'],
  Cel: ['°c', 'ºc', 'c', 'degc', 'celsius', 'degreescelsius'],
  '[degF]': ['°f', 'ºf', 'f', 'degf', 'fahrenheit', 'degreesfahrenheit'],
  V: ['v', 'volt', 'volts', 'vdc'],
  mV: ['mv', 'millivolt', 'millivolts'],
};

const PINT = 'A pint may be imperial or US: type "imp pt", or litres.';
const QUART = 'A quart may be US or imperial: type "US qt", or litres.';
const OUNCE = 'Ounces may be US or imperial: type "US fl oz", or mL.';

/** Two measures go by the same name, up to a fifth apart: the name alone is not accepted. */
const twofold: ReadonlyMap<string, string> = new Map([
  ...['pt', 'pint', 'pints'].map((name) => [name, PINT] as const),
  ...['qt', 'qts', 'quart', 'quarts'].map((name) => [name, QUART] as const),
  ...['oz', 'floz', 'fluidounces'].map((name) => [name, OUNCE] as const),
]);

const plain = (text: string): string => text.toLowerCase().replace(/[\s.·⋅∙*×_-]/g, '');

const unitBySpelling: ReadonlyMap<string, Unit> = new Map(
  unitSchema.options.flatMap((unit) =>
    [plain(unit), plain(unitFacts[unit].symbol), ...spellings[unit]].map((name) => [name, unit]),
  ),
);

/** The unit somebody means by "ft-lbs", "N·m" or a UCUM code; undefined where none or more than one goes by the name. */
export const parseUnit = (text: string): Unit | undefined => unitBySpelling.get(plain(text));

const LONGEST = 64;
const PARTS = /^([-+−]?[\d.,½¼¾⅛⅜⅝⅞][\d.,\s/½¼¾⅛⅜⅝⅞-]*)(.*)$/u;

/**
 * Reads what people type: "88 lb-ft", "12,5 Nm", "1 1/2 in", "14.4V"; a bare number is in `expected.unit`.
 * The value stays in the unit typed. Errors: nothing or no number typed, a number that reads two ways ("1,250"),
 * a unit unknown, missing, or of another quantity than expected.
 */
export const parseQuantity = (
  text: string,
  expected: Expected = {},
): Result<Measured, ParseProblem> => {
  const trimmed = text.trim();
  if (trimmed === '') return err({ kind: 'empty', message: 'Type a number and its unit.' });
  const parts = trimmed.length > LONGEST ? null : PARTS.exec(trimmed);
  if (parts === null) {
    return err({ kind: 'notANumber', message: 'Begin with a number, such as 120 or 12.5.' });
  }
  const [, numberText = '', unitText = ''] = parts;
  const number = parseNumber(numberText.replace(/[\s-]+$/u, ''));
  if (!number.ok) return number;

  if (unitText.trim() === '') {
    return expected.unit === undefined
      ? err({ kind: 'unitMissing', message: `${trimmed} of what? Type the unit too.` })
      : ok({ value: number.value, unit: expected.unit });
  }
  const unit = parseUnit(unitText);
  if (unit === undefined) {
    const message =
      twofold.get(plain(unitText)) ??
      `"${unitText.trim()}" is no unit known here; N·m, for example, is.`;
    return err({ kind: 'unknownUnit', message });
  }
  const wanted =
    expected.quantity ?? (expected.unit === undefined ? undefined : quantityOf(expected.unit));
  if (wanted !== undefined && quantityOf(unit) !== wanted) {
    const message = `${unitFacts[unit].symbol} measures ${quantityOf(unit)}; ${wanted} is asked for.`;
    return err({ kind: 'wrongQuantity', message });
  }
  return ok({ value: number.value, unit });
};
