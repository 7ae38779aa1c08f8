import { digitOf, teenOf, tensOf } from './number-words';

/** What a run of number words means. `ambiguous`: the shop uses these words for each of the candidates. */
export type SpokenNumber =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'ambiguous'; readonly candidates: readonly number[] }
  | { readonly kind: 'none' };

/**
 * How "two fifty" is meant: `whole` 250, as torques, angles and kilopascals are spoken; `either` also 2.50,
 * as litres, volts, bars and millimetres are spoken.
 */
export type PairSense = 'whole' | 'either';

type Words = readonly string[];

const none: SpokenNumber = { kind: 'none' };
const number = (value: number): SpokenNumber => ({ kind: 'number', value });
const ambiguous = (...candidates: number[]): SpokenNumber => ({ kind: 'ambiguous', candidates });
/** Decimals as spoken: 12.3, not 12.299999. */
const tidy = (value: number): number => Math.round(value * 1e6) / 1e6;

/** "seven", "seventeen", "seventy", "seventy one": 1–99. */
const below100 = (words: Words): number | undefined => {
  const [first, second] = words;
  if (words.length === 1) {
    const digit = first === 'oh' ? undefined : digitOf(first);
    return digit === 0 ? undefined : (digit ?? teenOf(first) ?? tensOf(first));
  }
  const tens = tensOf(first);
  const digit = second === 'oh' ? undefined : digitOf(second);
  return words.length === 2 && tens !== undefined && digit !== undefined && digit > 0
    ? tens + digit
    : undefined;
};

/** What may follow "hundred" or "thousand": nothing, or 1–99 with or without "and". */
const rest = (words: Words): number | undefined => {
  if (words.length === 0) return 0;
  return below100(words[0] === 'and' ? words.slice(1) : words);
};

/** "one hundred and twenty", "a hundred twenty", "fifteen hundred": up to nineteen hundred ninety nine. */
const hundreds = (words: Words): number | undefined => {
  const [first, second] = words;
  if (second !== 'hundred') return undefined;
  const teen = teenOf(first);
  const count =
    first === 'a'
      ? 1
      : teen === 10
        ? undefined
        : first === 'oh'
          ? undefined
          : (digitOf(first) ?? teen);
  const tail = rest(words.slice(2));
  return count === undefined || count === 0 || tail === undefined ? undefined : count * 100 + tail;
};

const thousands = (words: Words): number | undefined => {
  const [first, second] = words;
  if (second !== 'thousand') return undefined;
  const count = first === 'a' ? 1 : first === 'oh' ? undefined : digitOf(first);
  const after = words.slice(2);
  const behind = hundreds(after);
  const tail = behind !== undefined && behind < 1000 ? behind : rest(after);
  return count === undefined || count === 0 || tail === undefined ? undefined : count * 1000 + tail;
};

const cardinal = (words: Words): number | undefined =>
  words.length === 1 && words[0] === 'zero'
    ? 0
    : (below100(words) ?? hundreds(words) ?? thousands(words));

/** "one two zero", "nine nine four four": two to four digits. */
const digitString = (words: Words): number | undefined => {
  if (words.length < 2 || words.length > 4) return undefined;
  const digits = words.map(digitOf);
  return digits.some((digit) => digit === undefined) ? undefined : Number(digits.join(''));
};

/** A whole number and how it was spoken. */
type Whole =
  | { readonly as: 'plain'; readonly value: number }
  | { readonly as: 'pair'; readonly value: number }
  | { readonly as: 'longPair'; readonly value: number };

const wholes = (words: Words): Whole | undefined => {
  const plain = cardinal(words) ?? (words[0] === 'oh' ? undefined : digitString(words));
  if (plain !== undefined) return { as: 'plain', value: plain };
  const digit = words[0] === 'oh' ? undefined : digitOf(words[0]);
  const after = below100(words.slice(1));
  if (digit !== undefined && digit > 0 && after !== undefined && after >= 10)
    return { as: 'pair', value: digit * 100 + after };
  for (const split of [1, 2]) {
    const head = below100(words.slice(0, split));
    const tail = words.slice(split);
    const low =
      tail.length === 2 && tail[0] === 'oh'
        ? digitOf(tail[1])
        : ((value) => (value !== undefined && value >= 10 ? value : undefined))(below100(tail));
    if (head !== undefined && head >= 10 && low !== undefined)
      return { as: 'longPair', value: head * 100 + low };
  }
  return undefined;
};

/** Digits behind "point": "five", "oh five", "two five", "seventy five". */
const decimals = (words: Words): string | undefined => {
  const digits = words.map(digitOf);
  if (words.length >= 1 && words.length <= 3 && digits.every((digit) => digit !== undefined))
    return digits.join('');
  const two = below100(words);
  return two !== undefined && two >= 10 ? String(two) : undefined;
};

/**
 * Number words → number. Whole numbers up to 9999, decimals to three places, halves.
 * `ambiguous` where the shop uses the same words for several numbers; `none` where they are no number.
 */
export const parseNumber = (words: Words, pairs: PairSense = 'whole'): SpokenNumber => {
  const point = words.indexOf('point');
  if (point >= 0) {
    const behind = decimals(words.slice(point + 1));
    if (behind === undefined) return none;
    const before = words.slice(0, point);
    const bare = before.length === 0 || (before.length === 1 && before[0] === 'oh');
    const whole = bare ? ({ as: 'plain', value: 0 } as const) : wholes(before);
    if (whole === undefined || whole.as === 'longPair') return none;
    return number(Number(`${whole.value}.${behind}`));
  }
  const text = words.join(' ');
  if (text === 'a half' || text === 'half' || text === 'one half') return number(0.5);
  if (words.length > 3 && text.endsWith(' and a half')) {
    const whole = wholes(words.slice(0, -3));
    if (whole === undefined || whole.as === 'longPair') return none;
    // "a hundred and a half" is 100.5 to some and 150 to others.
    return whole.value % 100 === 0 && whole.value > 0
      ? ambiguous(whole.value + 0.5, whole.value * 1.5)
      : number(whole.value + 0.5);
  }
  if (words[0] === 'hundred') {
    const whole = hundreds(['a', ...words]); // the "one", or another digit, was lost
    return whole === undefined ? none : ambiguous(whole);
  }
  if (words[0] === 'oh') {
    const value = words.length > 1 ? digitString(words) : undefined;
    if (value === undefined) return none;
    return words.length === 2 ? ambiguous(value, tidy(value / 10)) : ambiguous(value);
  }
  const whole = wholes(words);
  if (whole === undefined) return none;
  if (whole.as === 'plain') return number(whole.value);
  const split = tidy(whole.value / 100);
  return whole.as === 'longPair' || pairs === 'either'
    ? ambiguous(whole.value, split)
    : number(whole.value);
};
