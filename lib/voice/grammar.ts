import type { VoiceContext } from './intent';
import { nouns } from './match-phrase';
import { asHeard } from './number-words';
import { numberPhrases } from './number-phrases';
import { phraseTable, rowKind } from './phrase-table';
import { letterPairs, letters, talkWords } from './talk-words';
import { spokenUnits } from './unit-words';
import { unknownWord } from './unknown-word';

export { unknownWord } from './unknown-word';

/** The grammars to listen with at the same time; `second` only gives a second opinion. */
export interface ListeningPlan {
  readonly main: readonly string[];
  /** `null`: the open vocabulary. */
  readonly second?: readonly string[] | null;
}

/** How much likelier than one phrase an unknown sound is. */
const unknownWeight = 20;

const repeated = (phrases: readonly string[], times: number): readonly string[] =>
  Array.from({ length: times }, () => phrases).flat();

const unknowns = repeated([unknownWord], unknownWeight);

/** The fixed parts of a phrase, in the spelling that is listened for. */
const fixedParts = (say: string): readonly string[] =>
  say
    .split(/\{\w+\}/)
    .map((part) => part.trim().split(' ').map(asHeard).join(' '))
    .filter((part) => part !== '');

const phrasesFor = (context: VoiceContext): readonly string[] => {
  const phrases = phraseTable
    .filter((phrase) => context.intents.includes(rowKind(phrase)))
    .flatMap((phrase) => phrase.say.flatMap(fixedParts));
  const named =
    context.labels.length === 0 ? [] : context.noun === undefined ? nouns : [context.noun];
  const own = (context.voice?.own ?? [])
    .filter(({ intent }) => context.intents.includes(intent.kind))
    .flatMap(({ say }) => fixedParts(say));
  const call = context.callWord === undefined ? [] : [context.callWord];
  return [...call, ...phrases, ...own, ...named, ...spokenUnits.flatMap(({ say }) => say)];
};

/**
 * The runtime grammar: the phrases that may be said now, all numbers always, and the unknown sound. A phrase that
 * stands in it several times is so much likelier. It never holds the expected value.
 */
export const grammarFor = (context: VoiceContext): readonly string[] => [
  ...phrasesFor(context),
  ...numberPhrases,
  ...unknowns,
];

/** The same with letters and words of talk, for a second opinion. */
const grammarWithTalk = (context: VoiceContext): readonly string[] => [
  ...phrasesFor(context),
  ...repeated(numberPhrases, 2),
  ...repeated(letters, 3),
  ...letterPairs,
  ...talkWords,
  ...unknowns,
];

/** What to listen with, in this context. */
export const listeningPlan = (context: VoiceContext): ListeningPlan => ({
  main: grammarFor(context),
  second: grammarWithTalk(context),
});
