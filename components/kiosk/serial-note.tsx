'use client';
import { modelYear, parseSerial, type SerialError, type Vin } from '@/lib/vehicle';
import { Glyph } from '../design/glyph';

const yearWords = (vin: Vin): string => {
  const year = modelYear(vin);
  switch (year.kind) {
    case 'one':
      return `model year ${year.year}`;
    case 'either':
      return `model year ${year.years[0]} or ${year.years[1]}, if its tenth character is one`;
    case 'unknown':
      return 'its tenth character is no model year';
  }
};

const checkWords = (vin: Vin): string =>
  vin.checkDigitFits
    ? 'its check digit fits'
    : 'no check digit is asked for where it comes from, so read it twice';

/** What the typed serial was taken for. */
export interface SerialReading {
  readonly text: string;
  readonly error?: SerialError;
}

/** A serial as typed: what it was taken for, or what is wrong with it; nothing where the field is empty. */
export const readSerial = (typed: string, asRead: boolean): SerialReading | undefined => {
  if (typed.trim() === '') return undefined;
  const serial = parseSerial(typed, asRead);
  if (!serial.ok) return { text: serial.error.message, error: serial.error };
  if (serial.value.kind === 'vin') {
    const { vin } = serial.value;
    return { text: `VIN: ${yearWords(vin)}; ${checkWords(vin)}.` };
  }
  const length = serial.value.text.replace(/[\s-]/g, '').length;
  return {
    text:
      length === 17
        ? 'Taken as it stands on the plate, without a check digit.'
        : `Taken as it is: ${length} characters. A VIN has 17.`,
  };
};

/** Said beside the field while it is typed. */
export function SerialNote({ reading }: { readonly reading: SerialReading | undefined }) {
  const wrong = reading?.error !== undefined;
  return (
    <p
      role="status"
      className={`flex min-h-[2.3rem] items-start gap-3 text-body ${wrong ? 'font-bold text-bad' : 'text-quiet'}`}
    >
      {wrong ? <Glyph name="alert" /> : null}
      <span>{reading?.text}</span>
    </p>
  );
}
