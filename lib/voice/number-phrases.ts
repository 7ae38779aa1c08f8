import { digitWords, numberWords, teenWords, tenWords } from './number-words';

// The recogniser makes pairs of words with back-off of what it is given. Pairs that occur inside numbers, given
// once each, keep short digits from being swallowed; no pair is likelier than another of its kind.

const digits = digitWords.filter((word) => word !== 'zero');
const zeros = ['zero', 'oh'];
const below100 = [...digits, ...teenWords, ...tenWords];

const each = (firsts: readonly string[], seconds: readonly string[]): readonly string[] =>
  firsts.flatMap((first) => seconds.map((second) => `${first} ${second}`));

/** Every pair of words that stands inside some number. */
export const numberPairs: readonly string[] = [
  ...each([...digits, ...zeros], [...digits, ...zeros]),
  ...each(digits, [...teenWords, ...tenWords]),
  ...each(tenWords, digits),
  ...each([...digits, 'a', ...teenWords.filter((word) => word !== 'ten')], ['hundred']),
  ...each([...digits, 'a'], ['thousand']),
  ...each(['hundred', 'thousand'], ['and']),
  ...each(['hundred', 'and'], below100),
  ...each([...below100, 'hundred', 'zero'], ['point']),
  ...each(['point'], [...digits, ...zeros, ...tenWords]),
  'and a half',
  ...each(below100, ['and a half']),
];

const singlesWeight = 3;

/** Number words as building blocks for a grammar: all numbers, none likelier than another. */
export const numberPhrases: readonly string[] = [
  ...Array.from({ length: singlesWeight }, () => numberWords).flat(),
  ...numberPairs,
];
