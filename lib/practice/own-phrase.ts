import {
  everyPhrase,
  matchPhrase,
  numberWords,
  phoneDistance,
  phonesOf,
  phraseTable,
  spokenUnits,
  type Intent,
  type OwnPhrase,
} from '../voice';
import { practicePhrase } from './phrases';

/** What destroys, closes or answers is said in the shop's words alone. */
const sameForAll: ReadonlySet<Intent['kind']> = new Set<Intent['kind']>([
  'takeBack',
  'leaveOut',
  'reopen',
  'closeJob',
  'yes',
  'no',
  'value',
  'ambiguousValue',
  'goTo',
]);

/** Phones between a phrase of one's own and any phrase of another meaning, and any number word. Our choice, no source. */
export const leastPhonesApart = 4;
/** Phones between each of its words and each number word that counts. */
const leastWordApart = 2;

const countingWords = numberWords.filter(
  (word) => !['a', 'and', 'oh', 'half', 'point'].includes(word),
);

/** Every fixed wording, and what it means; a wording with a slot counts with its fixed words. */
const wordings = phraseTable.flatMap((row) =>
  row.say
    .map((say) =>
      say
        .replaceAll(/\{\w+\}/g, '')
        .replaceAll(/ +/g, ' ')
        .trim(),
    )
    .filter((say) => say !== '')
    .map((say) => ({ say, intent: 'intent' in row ? row.intent : undefined })),
);

const same = (a: Intent, b: Intent | undefined): boolean => JSON.stringify(a) === JSON.stringify(b);

const within = (short: string, long: string): boolean => ` ${long} `.includes(` ${short} `);

const near = (a: readonly string[], say: string, least: number): boolean => {
  const b = phonesOf(say);
  return b !== undefined && phoneDistance(a, b) < least;
};

/**
 * Why these words may not stand for that intent with one person; undefined where they may. They must be words whose
 * sound is known, hold no number and no unit, neither be nor begin nor be part of a phrase (nor one of them), and lie
 * far enough in sound from all that means something else.
 */
export const whyNotOwn = (
  say: string,
  intent: Intent,
  others: readonly OwnPhrase[] = [],
): string | undefined => {
  if (sameForAll.has(intent.kind)) return 'this is said in the same words by everybody';
  const words = say.split(' ');
  const phones = phonesOf(say);
  if (phones === undefined || words.length > 4) return 'these words are not known here';
  if (words.some((word) => numberWords.includes(word))) return 'it holds a word of numbers';
  const units = spokenUnits.flatMap((unit) => unit.say);
  if (units.some((unit) => within(unit, say) || within(say, unit))) return 'it holds a unit';
  if (matchPhrase(words, everyPhrase).kind === 'phrase') return 'it is a phrase already';
  const own = others.map((other) => ({ say: other.say, intent: other.intent }));
  const clash = [...wordings, ...own].find(
    (other) =>
      within(say, other.say) ||
      within(other.say, say) ||
      (!same(intent, other.intent) && near(phones, other.say, leastPhonesApart)),
  );
  if (clash !== undefined) return `it is too like “${clash.say}”`;
  const number = countingWords.find(
    (counted) =>
      near(phones, counted, leastPhonesApart) ||
      words.some((word) => near(phonesOf(word) ?? [], counted, leastWordApart)),
  );
  return number === undefined ? undefined : `it is too like “${number}”`;
};

/** What a practised phrase means. */
export const meaningOf = (say: string): Intent | undefined => {
  const match = matchPhrase(say.split(' '), everyPhrase);
  return match.kind === 'phrase' ? match.intent : undefined;
};

/** Whether a practised phrase gives a number. */
export const isValue = (say: string): boolean => {
  const kind = meaningOf(say)?.kind;
  return kind === 'value' || kind === 'ambiguousValue';
};

/** What the person may choose from in place of a phrase, beside what was chosen for others. */
export const choicesFor = (say: string, chosen: readonly OwnPhrase[] = []): readonly string[] => {
  const phrase = practicePhrase(say);
  const intent = meaningOf(say);
  if (phrase === undefined || intent === undefined) return [];
  return phrase.others.filter((other) => whyNotOwn(other, intent, chosen) === undefined);
};

/** Other words that everybody may say for the same. */
export const otherWordings = (say: string): readonly string[] => {
  const match = matchPhrase(say.split(' '), everyPhrase);
  return match.kind !== 'phrase' || !('intent' in match.row)
    ? []
    : match.row.say.filter((other) => other !== say);
};
