import type { Heard, Intent, VoiceContext, Word } from './intent';
import { numberWords } from './number-words';
import type { PersonalVoice } from './personal-voice';
import type { Reading } from './reading';

/** Why an utterance is not acted on at once, in words for the screen. */
export const doubts = {
  silence: 'nothing was said',
  noPhrase: 'no phrase that is known here',
  unknownInside: 'a word in the middle was not understood',
  talk: 'more was said than a phrase',
  several: 'these words can mean several numbers',
  noSuchFastener: 'no such fastener here',
  noSuchStep: 'no such step here',
  heardTwoWays: 'it was heard in two ways',
  aroundIt: 'something else was said before or after it',
  unclear: 'it was not heard clearly',
  pause: 'there was a long pause inside the number',
  mistaken: 'this number was mistaken in your voice practice',
  tooShort: 'a word was too short to be sure of',
  ownVoice: 'the kiosk was speaking; say it again',
  notCalled: 'the kiosk was not called',
  noise: 'it is too loud here to be sure of a number',
  tool: 'too loud, say it again',
} as const;
export type Doubt = (typeof doubts)[keyof typeof doubts];

/** Chosen by measurement over recordings, clean and in noise. */
export const limits = {
  /** Every word of a phrase, and every word of a number. */
  leastConfidence: 0.5,
  leastNumberConfidence: 0.8,
  /** "fifteen" and "fifty", "five" and "nine" differ by little. */
  leastAlikeConfidence: 0.97,
  longestPauseS: 1.3,
  shortestWordS: 0.05,
  /** Of the numbers that were clear to both recognisers, all wrong ones lay below 15 dB. */
  leastSpeechOverNoiseDb: 16,
  /** Under noise that comes and goes, which that does not tell of: the one wrong one lay at 9 dB. */
  leastSpeechOverLoudNoiseDb: 12,
} as const;

const isValue = (intent: Intent): boolean =>
  intent.kind === 'value' || intent.kind === 'ambiguousValue';

const inNumber = (word: Word): boolean => numberWords.includes(word.text);
const teenOrTen = /^(thir|four|for|fif|six|seven|eigh|nine)(teen|ty)$/;

/** "fifty two" can be no "fifteen two": only one without a digit behind it can be mistaken. */
const soundsAlike = (words: readonly Word[], at: number): boolean => {
  if (/^(five|nine)$/.test(words[at]?.text ?? '')) return true;
  const next = words[at + 1]?.text;
  const followedByDigit =
    next !== undefined && /^(one|two|three|four|five|six|seven|eight|nine)$/.test(next);
  return teenOrTen.test(words[at]?.text ?? '') && !followedByDigit;
};

const contextDoubt = (intent: Intent, context: VoiceContext): Doubt | undefined => {
  if (intent.kind === 'ambiguousValue') return doubts.several;
  if (intent.kind === 'value' && intent.label !== undefined)
    return context.labels.includes(intent.label) ? undefined : doubts.noSuchFastener;
  if ((intent.kind === 'goTo' || intent.kind === 'reopen') && intent.step !== undefined)
    return intent.step < 1 || intent.step > context.steps ? doubts.noSuchStep : undefined;
  return undefined;
};

const clarityDoubt = (words: readonly Word[], voice?: PersonalVoice): Doubt | undefined => {
  const leastNumber = Math.max(limits.leastNumberConfidence, voice?.leastNumberConfidence ?? 0);
  const least = Math.max(limits.leastConfidence, voice?.leastConfidence ?? 0);
  const unclear = words.some(
    (word, at) =>
      word.confidence <
      (soundsAlike(words, at)
        ? Math.max(limits.leastAlikeConfidence, leastNumber)
        : inNumber(word)
          ? leastNumber
          : least),
  );
  return unclear ? doubts.unclear : undefined;
};

const rhythmDoubt = (words: readonly Word[]): Doubt | undefined => {
  if (words.some((word) => word.endS - word.startS < limits.shortestWordS)) return doubts.tooShort;
  const paused = words.some((word, at) => {
    const before = words[at - 1];
    return before !== undefined && word.startS - before.endS > limits.longestPauseS;
  });
  return paused ? doubts.pause : undefined;
};

const noiseDoubt = ({
  speechOverNoiseDb: over,
  speechOverLoudNoiseDb: overLoud,
}: Heard): Doubt | undefined =>
  (over !== undefined && over < limits.leastSpeechOverNoiseDb) ||
  (overLoud !== undefined && overLoud < limits.leastSpeechOverLoudNoiseDb)
    ? doubts.noise
    : undefined;

/** What speaks against acting at once on one recogniser's reading, the weightiest first. */
export const doubtOf = (
  intent: Intent,
  reading: Reading,
  heard: Heard,
  context: VoiceContext,
): Doubt | undefined => {
  const found = contextDoubt(intent, context) ?? clarityDoubt(reading.words, context.voice);
  if (found !== undefined || !isValue(intent)) return found;
  if (reading.words.some(({ text }) => context.voice?.readBack.includes(text)))
    return doubts.mistaken;
  if (reading.unknownAround.length > 0) return doubts.aroundIt;
  return noiseDoubt(heard) ?? rhythmDoubt(reading.words);
};
