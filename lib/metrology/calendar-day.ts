import { err, ok, type Result } from '../result';

export interface DayError {
  readonly kind: 'notADay';
  readonly message: string;
}

interface Day {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

const daysIn = (year: number, month: number): number => {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
};

const readDay = (text: string): Result<Day, DayError> => {
  const [year = 0, month = 0, day = 0] = /^\d{4}-\d{2}-\d{2}$/.test(text)
    ? text.split('-').map(Number)
    : [];
  return month >= 1 && month <= 12 && day >= 1 && day <= daysIn(year, month)
    ? ok({ year, month, day })
    : err({ kind: 'notADay', message: `"${text}" is no day; write 2026-03-31.` });
};

const padded = (value: number, width: number): string => String(value).padStart(width, '0');

/** The day itself where it is a real one written as RFC 3339 writes it ("2026-03-31"); such days sort as text. */
export const dayOf = (text: string): Result<string, DayError> => {
  const read = readDay(text);
  return read.ok ? ok(text) : read;
};

/**
 * A day some whole months later: the same day of the month, or the last where that month is shorter
 * (31 August and six months is 28 February). Errors: no day, months not whole or out of the calendar.
 */
export const addMonths = (from: string, months: number): Result<string, DayError> => {
  const read = readDay(from);
  if (!read.ok) return read;
  const { year, month, day } = read.value;
  const count = year * 12 + (month - 1) + months;
  const toYear = Math.floor(count / 12);
  if (!Number.isInteger(months) || toYear < 0 || toYear > 9999) {
    return err({ kind: 'notADay', message: `${String(months)} months lead to no day.` });
  }
  const toMonth = count - toYear * 12 + 1;
  const toDay = Math.min(day, daysIn(toYear, toMonth));
  return ok(`${padded(toYear, 4)}-${padded(toMonth, 2)}-${padded(toDay, 2)}`);
};
