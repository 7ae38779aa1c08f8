import { err, ok, type Result } from '../result';
import { parseVin, tidySerial, type Vin, type VinError } from './vin';

/** What identifies a vehicle: a VIN, or any other number stamped on it, taken as it is. */
export type Serial =
  { readonly kind: 'vin'; readonly vin: Vin } | { readonly kind: 'other'; readonly text: string };

export interface SerialError {
  readonly kind: 'empty' | 'tooLong' | 'character' | VinError['kind'];
  readonly message: string;
}

/** As long as a stored serial may be. */
const LONGEST = 40;

/**
 * Reads what stands on the plate. Seventeen letters and digits are a VIN and must be a right one; anything else is
 * another serial and accepted as such. `asRead`: read twice, and seventeen characters whose check digit does not fit
 * are another serial too, as on machines that are no road vehicles and outside 49 CFR 565.
 * Errors: empty, over 40 characters, signs that are on no plate, a wrong VIN.
 */
export const parseSerial = (text: string, asRead = false): Result<Serial, SerialError> => {
  const trimmed = text.trim();
  if (trimmed === '') return err({ kind: 'empty', message: 'Type the number on the plate.' });
  if (trimmed.length > LONGEST) {
    return err({ kind: 'tooLong', message: `At most ${String(LONGEST)} characters.` });
  }
  if (!/^[\p{L}\p{N} ./*-]+$/u.test(trimmed)) {
    return err({ kind: 'character', message: 'Letters, digits, blanks and . / * - only.' });
  }
  if (!/^[A-Z0-9]{17}$/.test(tidySerial(trimmed))) return ok({ kind: 'other', text: trimmed });
  const vin = parseVin(trimmed);
  if (vin.ok) return ok({ kind: 'vin', vin: vin.value });
  return asRead && vin.error.kind === 'checkDigit'
    ? ok({ kind: 'other', text: tidySerial(trimmed) })
    : vin;
};

/** The serial as it is kept: a VIN in capitals without blanks, another as it was typed. */
export const serialText = (serial: Serial): string =>
  serial.kind === 'vin' ? serial.vin.text : serial.text;
