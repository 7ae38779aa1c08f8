import { err, ok, type Result } from '../result';

/** A vehicle identification number by ISO 3779: 17 characters, without I, O and Q. */
export interface Vin {
  readonly text: string;
  /** World manufacturer identifier, characters 1–3 (ISO 3780). */
  readonly maker: string;
  /** Vehicle descriptor section, characters 4–9. */
  readonly descriptor: string;
  /** Vehicle indicator section, characters 10–17. */
  readonly indicator: string;
  /** Whether 49 CFR 565 makes the ninth character a check digit: North America, first character 1 to 5. */
  readonly checkDigitRequired: boolean;
  /** Whether the ninth character is what it would be as a check digit. Elsewhere it may be anything. */
  readonly checkDigitFits: boolean;
}

export interface VinError {
  readonly kind: 'length' | 'letter' | 'checkDigit';
  readonly message: string;
}

/** Values of the letters (49 CFR 565.15, from memory); digits stand for themselves. */
const values: ReadonlyMap<string, number> = new Map(
  Object.entries({
    ...{ A: 1, B: 2, C: 3, D: 4, E: 5, F: 6, G: 7, H: 8 },
    ...{ J: 1, K: 2, L: 3, M: 4, N: 5, P: 7, R: 9 },
    ...{ S: 2, T: 3, U: 4, V: 5, W: 6, X: 7, Y: 8, Z: 9 },
    ...Object.fromEntries(Array.from('0123456789').map((digit) => [digit, Number(digit)])),
  }),
);

/** Weights of the 17 places (49 CFR 565.15, from memory); the check digit itself weighs nothing. */
const weights = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2] as const;

/** Mistaken for each other; the letters are never used, so the digit is meant. */
const meant: ReadonlyMap<string, string> = new Map([
  ['I', '1'],
  ['O', '0'],
  ['Q', '0'],
]);

/** “O” in place 3 (is it 0?) and “I” in place 9 (is it 1?) are in no VIN. Read them again. */
const inNoVin = (
  impossible: readonly { readonly character: string; readonly place: number }[],
): string => {
  const named = impossible.map(({ character, place }) => {
    const digit = meant.get(character);
    const hint = digit === undefined ? '' : ` (is it ${digit}?)`;
    return `“${character}” in place ${String(place + 1)}${hint}`;
  });
  const last = named.at(-1) ?? '';
  return named.length < 2
    ? `${last} is in no VIN. Read it again.`
    : `${named.slice(0, -1).join(', ')} and ${last} are in no VIN. Read them again.`;
};

/**
 * The check digit of 17 characters by 49 CFR 565.15: weighted sum modulo 11, X for ten.
 * Whatever stands in the ninth place does not count. Errors: not 17 characters, or one that no VIN has.
 */
export const checkDigit = (text: string): Result<string, VinError> => {
  const characters = Array.from(text.toUpperCase());
  if (characters.length !== weights.length) {
    return err({
      kind: 'length',
      message: `A VIN has 17 characters, not ${String(characters.length)}.`,
    });
  }
  const impossible = characters.flatMap((character, place) =>
    values.has(character) ? [] : [{ character, place }],
  );
  if (impossible.length > 0) return err({ kind: 'letter', message: inNoVin(impossible) });
  const sum = weights.reduce<number>(
    (total, weight, place) => total + weight * (values.get(characters[place] ?? '') ?? 0),
    0,
  );
  const rest = sum % 11;
  return ok(rest === 10 ? 'X' : String(rest));
};

/** As read off a plate: capitals, without blanks and hyphens. */
export const tidySerial = (text: string): string => text.toUpperCase().replace(/[\s-]/g, '');

/**
 * Reads a VIN. Errors: not 17 characters; I, O, Q or another sign (with the digit that is probably meant); a check
 * digit that does not fit where 49 CFR 565 requires one.
 */
export const parseVin = (text: string): Result<Vin, VinError> => {
  const tidy = tidySerial(text);
  const digit = checkDigit(tidy);
  if (!digit.ok) return digit;
  const checkDigitRequired = /^[1-5]/.test(tidy);
  const checkDigitFits = tidy[8] === digit.value;
  if (checkDigitRequired && !checkDigitFits) {
    return err({
      kind: 'checkDigit',
      message: `The check digit says ${digit.value}, the plate says ${tidy.charAt(8)} in place 9: one of the 17 is misread. Read it again.`,
    });
  }
  return ok({
    text: tidy,
    maker: tidy.slice(0, 3),
    descriptor: tidy.slice(3, 9),
    indicator: tidy.slice(9),
    checkDigitRequired,
    checkDigitFits,
  });
};
