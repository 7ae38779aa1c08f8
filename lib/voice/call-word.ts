import { unknownWord } from './unknown-word';
import type { Heard, Word } from './intent';

/**
 * The words by which a kiosk can be called, where its bay has one. Each lies at least four phones (CMUdict) from every
 * phrase and every number word, and is rare in the talk of a shop. Of 32 phrases behind them from eight made voices, both
 * recognisers heard “jupiter” in 32 and “compass” in 29 (“penguin” in 11, “harvest” in 27).
 */
export const callWords = ['jupiter', 'compass'] as const;
export type CallWord = (typeof callWords)[number];

/** Until when in the sound nothing needs the call word: after a phrase that was acted on, and after a question. */
export const callRules = {
  afterActS: 6,
  afterQuestionS: 10,
  /** Before the call word it must be quiet so long, or it is a word of talk. */
  pauseBeforeS: 0.25,
} as const;

const heardFrom = (heard: Heard, words: readonly Word[]): Heard => ({
  ...heard,
  words,
  text: words.map(({ text }) => text).join(' '),
});

/**
 * What one recogniser heard behind the call word; undefined where it was not called. What was said before a pause and
 * the call word is not for the kiosk.
 */
export const behindCall = (heard: Heard, word: CallWord): Heard | undefined => {
  const at = heard.words.findLastIndex(({ text }) => text === word);
  const call = heard.words[at];
  if (call === undefined) return undefined;
  const before = heard.words.slice(0, at).findLast(({ text }) => text !== unknownWord);
  if (before !== undefined && call.startS - before.endS < callRules.pauseBeforeS) return undefined;
  return heardFrom(heard, heard.words.slice(at + 1));
};
