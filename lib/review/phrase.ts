import { asHeard, numberWords } from '../voice/number-words';
import { phraseTable } from '../voice/phrase-table';
import { spokenUnits } from '../voice/unit-words';

/** What was said that is no phrase of the table. */
export const noPhrase = '';

/** How a phrase of which only the meaning is known is named. */
export const usualValuePhrase = 'torqued {value}';

const nouns = 'bolt|nut|screw|stud|plug';
const numeric = new Set([
  ...numberWords,
  ...spokenUnits.flatMap(({ say }) => say.flatMap((words) => words.split(' '))),
]);

/** One spelling for words that sound the same, whatever was written. */
const plain = (text: string): string => text.trim().split(/\s+/).map(asHeard).join(' ');

interface Pattern {
  readonly phrase: string;
  readonly says: RegExp;
  readonly slots: number;
}

const slot = (word: string): string => {
  if (word === '{fastener}') return `(?:${nouns}) ([a-z ]+)`;
  return word.startsWith('{') ? '([a-z ]+)' : asHeard(word);
};

const phrases = phraseTable.flatMap(({ say }) => say);
const fixed = new Map(
  phrases.filter((phrase) => !phrase.includes('{')).map((phrase) => [plain(phrase), phrase]),
);
/** Those with most words of their own first: "torqued {value}" before "{value}". */
const open: readonly Pattern[] = phrases
  .filter((phrase) => phrase.includes('{'))
  .map((phrase) => ({
    phrase,
    says: new RegExp(`^${phrase.split(' ').map(slot).join(' ')}$`),
    slots: phrase.split('{').length - 1,
  }))
  .sort((a, b) => b.phrase.split(' ').length - a.phrase.split(' ').length || b.slots - a.slots);

const isNumber = (words: string): boolean => words.split(' ').every((word) => numeric.has(word));

/** The phrase of the table that some words are, as the table writes it; `noPhrase` where they are none. */
export const phraseOf = (said: string): string => {
  const text = plain(said);
  const whole = fixed.get(text);
  if (whole !== undefined) return whole;
  const found = open.find(({ says }) => {
    const filled = says.exec(text);
    return filled?.slice(1).every(isNumber) ?? false;
  });
  return found?.phrase ?? noPhrase;
};
