import { unknownWord } from './grammar';
import type { Heard, Intent, Understanding, VoiceContext } from './intent';
import { matchPhrase } from './match-phrase';

/** Why an utterance is not acted on at once, in words for the screen. */
export const doubts = {
  silence: 'nothing was said',
  noPhrase: 'no phrase that is known here',
  unknownInside: 'a word in the middle was not understood',
  several: 'these words can mean several numbers',
  noSuchFastener: 'no such fastener here',
  noSuchStep: 'no such step here',
} as const;

const isUnknown = (text: string): boolean => text === unknownWord;

/** The words without unknown sounds before and after them. */
const core = (words: Heard['words']): Heard['words'] => {
  const from = words.findIndex((word) => !isUnknown(word.text));
  const to = words.findLastIndex((word) => !isUnknown(word.text));
  return from < 0 ? [] : words.slice(from, to + 1);
};

const doubtOf = (intent: Intent, context: VoiceContext): string | undefined => {
  if (intent.kind === 'ambiguousValue') return doubts.several;
  if (
    intent.kind === 'value' &&
    intent.label !== undefined &&
    !context.labels.includes(intent.label)
  )
    return doubts.noSuchFastener;
  if ((intent.kind === 'goTo' || intent.kind === 'reopen') && intent.step !== undefined)
    return intent.step < 1 || intent.step > context.steps ? doubts.noSuchStep : undefined;
  return undefined;
};

/** What an utterance means, and whether it may act without asking back. */
export const understand = (heard: Heard, context: VoiceContext): Understanding => {
  const words = core(heard.words);
  const said = words.map((word) => word.text).join(' ');
  if (words.length === 0) return { kind: 'nothing', why: doubts.silence, said: heard.text };
  if (words.some((word) => isUnknown(word.text)))
    return { kind: 'nothing', why: doubts.unknownInside, said: heard.text };
  const match = matchPhrase(said.split(' '), context);
  if (match.kind === 'none') return { kind: 'nothing', why: doubts.noPhrase, said: heard.text };
  const confidence = Math.min(...words.map((word) => word.confidence));
  const why = doubtOf(match.intent, context);
  const found = { kind: 'intent', intent: match.intent, said: heard.text, confidence } as const;
  return why === undefined
    ? { ...found, certainty: 'sure' }
    : { ...found, certainty: 'unsure', why };
};

/** With a second opinion, where the plan has a second grammar. */
export const understandPair = (
  main: Heard,
  _second: Heard | undefined,
  context: VoiceContext,
): Understanding => understand(main, context);
