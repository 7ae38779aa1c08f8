import { err, ok, type Result } from '../result';

export interface NumberProblem {
  readonly kind: 'empty' | 'notANumber' | 'ambiguous';
  readonly message: string;
}

const vulgar: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** More digits than these no tool shows; they are a stuck key. */
const DECIMAL = /^\d{0,9}(?:\.\d{0,9})?$/;
const GROUPED = /^\d{1,3}(?:,\d{3})+(?:\.\d*)?$/;
const GROUPED_COMMA = /^\d{1,3}(?:\.\d{3})+,\d*$/;
/** Fractions of an inch only: "120/130" is two numbers, not a fraction. */
const FRACTION = /^(?:(\d{1,6})(?:\s+|-))?(\d{1,2})\s*\/\s*(2|4|8|16|32|64)$/;

const notANumber = (text: string): Result<number, NumberProblem> =>
  err({ kind: 'notANumber', message: `"${text}" is no number; type 120, 12.5 or 1 1/2.` });

const decimal = (text: string): number | undefined =>
  DECIMAL.test(text) && /\d/.test(text) ? Number(text) : undefined;

const magnitude = (text: string): Result<number, NumberProblem> => {
  const fraction = FRACTION.exec(text);
  if (fraction !== null) {
    const [, whole = '0', over = '', under = ''] = fraction;
    return Number(under) === 0
      ? notANumber(text)
      : ok(Number(whole) + Number(over) / Number(under));
  }
  // A comma before exactly three digits is a decimal comma to some and groups thousands to others.
  if (/^[1-9]\d{0,2},\d{3}$/.test(text)) {
    const [whole = '', thousandths = ''] = text.split(',');
    return err({
      kind: 'ambiguous',
      message: `Is ${text} ${whole}${thousandths} or ${whole}.${thousandths}? Type it without the comma.`,
    });
  }
  const plain = GROUPED_COMMA.test(text)
    ? text.replaceAll('.', '').replace(',', '.')
    : GROUPED.test(text)
      ? text.replaceAll(',', '')
      : text.replace(',', '.');
  const value = decimal(plain);
  return value === undefined ? notANumber(text) : ok(value);
};

/**
 * Reads a number as typed: decimal point or comma, a leading sign, "1/2", "1 1/2", "1½".
 * Error `ambiguous` where a comma may group thousands or mark the decimals ("1,250").
 */
export const parseNumber = (text: string): Result<number, NumberProblem> => {
  const written = text
    .trim()
    .replace(/[½¼¾⅛⅜⅝⅞]/gu, (sign) => ` ${vulgar[sign] ?? ''}`)
    .replace('−', '-');
  const [, sign = '', rest = ''] = /^([-+]?)\s*(.*)$/u.exec(written) ?? [];
  if (rest === '') return err({ kind: 'empty', message: 'Type a number.' });
  const size = magnitude(rest);
  return size.ok && sign === '-' ? ok(-size.value + 0) : size;
};
