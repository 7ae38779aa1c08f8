import { afterAll, expect } from 'vitest';

/** Where a published value was taken from. */
export type Origin =
  /** Read in the source itself. */
  | 'printed'
  /** Follows exactly from definitions, or made by a reference library and committed as data. */
  | 'computed'
  | 'from memory';

/** How far a computed value may lie from the published one; `relative` is of the published value. */
export type Allowance = { readonly relative: number } | { readonly absolute: number };

export interface Source {
  /** A number agrees with the published one. */
  number(what: string, actual: number, published: number, allowance: Allowance): void;
  /** Anything else is exactly the published thing: an order, a word, a digit. */
  exactly<T>(what: string, actual: T, published: T): void;
}

/**
 * A published source; call it at the top of a test file. Each check is counted, and after the file has run one
 * line a source is printed as a row of a Markdown table: source, origin, checks, largest relative error.
 */
export const source = (title: string, origin: Origin): Source => {
  let checks = 0;
  let largest = 0;
  afterAll(() => {
    expect(checks, `${title}: named but never checked against`).toBeGreaterThan(0);
    console.log(`| ${title} | ${origin} | ${String(checks)} | ${largest.toExponential(1)} |`);
  });
  return {
    number: (what, actual, published, allowance) => {
      checks += 1;
      const error = Math.abs(actual - published);
      const allowed =
        'absolute' in allowance ? allowance.absolute : allowance.relative * Math.abs(published);
      expect(
        error,
        `${what}: computed ${String(actual)}, published ${String(published)} (${title})`,
      ).toBeLessThanOrEqual(allowed);
      if (published !== 0) largest = Math.max(largest, error / Math.abs(published));
    },
    exactly: (what, actual, published) => {
      checks += 1;
      expect(actual, `${what} (${title})`).toEqual(published);
    },
  };
};
