import { kinds, type Kind } from './kind';
import type { Row } from './row';

/** Which events are listed: of any of the kinds (none: of all), and at one step. */
export interface Filter {
  readonly kinds: readonly Kind[];
  readonly step?: string;
}

/** As an address has it: `kind` may come several times. What is no kind is left aside. */
export const parseFilter = (
  kind: string | readonly string[] | undefined,
  step: string | readonly string[] | undefined,
): Filter => {
  const named = kind === undefined ? [] : typeof kind === 'string' ? [kind] : kind;
  return {
    kinds: kinds.filter((one) => named.includes(one)),
    ...(typeof step === 'string' && step !== '' ? { step } : {}),
  };
};

/** The address of a moment of a job, with what is listed. */
export const momentAddress = (job: string, filter: Filter, at: number): string => {
  const query = new URLSearchParams(filter.kinds.map((kind): [string, string] => ['kind', kind]));
  if (filter.step !== undefined) query.set('step', filter.step);
  query.set('at', String(at));
  return `/jobs/${job}?${query.toString()}`;
};

export const matches = (row: Row, filter: Filter): boolean =>
  (filter.kinds.length === 0 || row.kinds.some((kind) => filter.kinds.includes(kind))) &&
  (filter.step === undefined || row.step === filter.step);

/** So many rows are listed at once. */
export const pageSize = 100;

/** The rows around a moment, with where the pages before and after them are. */
export interface Page {
  readonly rows: readonly Row[];
  /** Of how many that match. */
  readonly matching: number;
  /** How many that match come before these. */
  readonly before: number;
  /** The last event of the page before, and the first of the page after. */
  readonly earlier?: number;
  readonly later?: number;
}

/** The page on which the last matching event up to `at` is. */
export const pageAt = (rows: readonly Row[], filter: Filter, at: number): Page => {
  const matching = rows.filter((row) => matches(row, filter));
  const upTo = matching.findLastIndex(({ seq }) => seq <= at);
  const before = Math.floor(Math.max(0, upTo) / pageSize) * pageSize;
  const earlier = matching[before - 1]?.seq;
  const later = matching[before + pageSize]?.seq;
  return {
    rows: matching.slice(before, before + pageSize),
    matching: matching.length,
    before,
    ...(earlier === undefined ? {} : { earlier }),
    ...(later === undefined ? {} : { later }),
  };
};
