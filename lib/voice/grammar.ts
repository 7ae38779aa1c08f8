import type { VoiceContext } from './intent';
import { nouns } from './match-phrase';
import { numberWords } from './number-words';
import { phraseTable, rowKind } from './phrase-table';
import { spokenUnits } from './unit-words';

/** What the recogniser names a sound that is none of its words. */
export const unknownWord = '[unk]';

/** The grammars to listen with at the same time; `second` only gives a second opinion. */
export interface ListeningPlan {
  readonly main: readonly string[];
  /** `null`: the open vocabulary. */
  readonly second?: readonly string[] | null;
}

const withoutSlots = (say: string): readonly string[] =>
  say
    .split(/\{\w+\}/)
    .map((part) => part.trim())
    .filter((part) => part.length > 0);

/**
 * Phrases for a runtime grammar: those valid now, all numbers always, and the unknown word.
 * The recogniser makes word pairs with back-off of it, so number words as building blocks allow every number.
 */
export const grammarFor = (context: VoiceContext): readonly string[] => {
  const phrases = phraseTable
    .filter((phrase) => context.intents.includes(rowKind(phrase)))
    .flatMap((phrase) => phrase.say.flatMap(withoutSlots));
  const named =
    context.labels.length === 0 ? [] : context.noun === undefined ? nouns : [context.noun];
  const units = spokenUnits.flatMap(({ say }) => say);
  return [...new Set([...phrases, ...named, ...units, ...numberWords, unknownWord])];
};

export const listeningPlan = (context: VoiceContext): ListeningPlan => ({
  main: grammarFor(context),
});
