import { err, ok, type Result } from '../result';

/** A number for which a formula means nothing. */
export interface OutOfDomain {
  readonly code: 'outOfDomain';
  readonly what: string;
  readonly value: number;
  /** One sentence: what it must be. */
  readonly message: string;
}

export const outOfDomain = (what: string, value: number, must: string): OutOfDomain => ({
  code: 'outOfDomain',
  what,
  value,
  message: `The ${what} must be ${must}.`,
});

/** The first of the named numbers that is not above zero and finite. */
export const notPositive = (named: Readonly<Record<string, number>>): OutOfDomain | undefined => {
  for (const [what, value] of Object.entries(named)) {
    if (!(value > 0 && Number.isFinite(value))) return outOfDomain(what, value, 'above zero');
  }
  return undefined;
};

/** The first of the named numbers that is below zero or not finite. */
export const negative = (named: Readonly<Record<string, number>>): OutOfDomain | undefined => {
  for (const [what, value] of Object.entries(named)) {
    if (!(value >= 0 && Number.isFinite(value))) {
      return outOfDomain(what, value, 'zero or more');
    }
  }
  return undefined;
};

/** A result that has to be a number: overflow of absurd but finite inputs is an error like any other. */
export const finite = (what: string, value: number): Result<number, OutOfDomain> =>
  Number.isFinite(value) ? ok(value) : err(outOfDomain(what, value, 'a finite number'));
