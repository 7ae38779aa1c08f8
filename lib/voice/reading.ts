import { unknownWord } from './unknown-word';
import type { Heard, VoiceContext, Word } from './intent';
import { matchPhrase, type Match } from './match-phrase';

/** One recogniser's words, laid out for judging: the phrase in them and the unknown sounds around it. */
export interface Reading {
  /** From the first to the last known word. */
  readonly words: readonly Word[];
  readonly match: Match;
  /** An unknown sound stands between the known words. */
  readonly unknownInside: boolean;
  /** Unknown sounds before and after them. */
  readonly unknownAround: readonly Word[];
}

const isUnknown = (word: Word): boolean => word.text === unknownWord;

/** Reads the words of one recogniser as one phrase. */
export const readHeard = (heard: Heard, context: VoiceContext): Reading => {
  const from = heard.words.findIndex((word) => !isUnknown(word));
  const to = heard.words.findLastIndex((word) => !isUnknown(word));
  const words = from < 0 ? [] : heard.words.slice(from, to + 1);
  const unknownInside = words.some(isUnknown);
  return {
    words,
    match:
      words.length === 0 || unknownInside
        ? { kind: 'none' }
        : matchPhrase(
            words.map((word) => word.text),
            context,
          ),
    unknownInside,
    unknownAround:
      from < 0 ? heard.words : [...heard.words.slice(0, from), ...heard.words.slice(to + 1)],
  };
};
