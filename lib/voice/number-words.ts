/** The words that numbers are spoken with. "oh" is a zero inside a number, never one alone. */
export const digitWords = [
  'zero',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
] as const;

export const teenWords = [
  'ten',
  'eleven',
  'twelve',
  'thirteen',
  'fourteen',
  'fifteen',
  'sixteen',
  'seventeen',
  'eighteen',
  'nineteen',
] as const;

/** By tens, from twenty. */
export const tenWords = [
  'twenty',
  'thirty',
  'forty',
  'fifty',
  'sixty',
  'seventy',
  'eighty',
  'ninety',
] as const;

export const joiningWords = ['oh', 'hundred', 'thousand', 'and', 'a', 'point', 'half'] as const;

/** Every word that can stand inside a number. */
export const numberWords: readonly string[] = [
  ...digitWords,
  ...teenWords,
  ...tenWords,
  ...joiningWords,
];

/** Words that sound alike count as one: only the spelling on the right is listened for. */
const alike: Readonly<Record<string, string>> = { for: 'four', to: 'two', too: 'two', won: 'one' };

/** The spelling that stands for all words that sound the same. */
export const asHeard = (word: string): string => alike[word] ?? word;

const indexOf = (list: readonly string[], word: string | undefined): number | undefined => {
  const at = word === undefined ? -1 : list.indexOf(word);
  return at < 0 ? undefined : at;
};

/** 0–9; "oh" counts as zero. */
export const digitOf = (word: string | undefined): number | undefined =>
  word === 'oh' ? 0 : indexOf(digitWords, word);

/** 10–19. */
export const teenOf = (word: string | undefined): number | undefined => {
  const at = indexOf(teenWords, word);
  return at === undefined ? undefined : at + 10;
};

/** 20, 30 … 90. */
export const tensOf = (word: string | undefined): number | undefined => {
  const at = indexOf(tenWords, word);
  return at === undefined ? undefined : (at + 2) * 10;
};
