import { doubtOf, doubts, type Doubt } from './doubt';
import type { Heard, Intent, Understanding, VoiceContext } from './intent';
import { readHeard, type Reading } from './reading';
import { sameIntent } from './same-intent';

export { doubts } from './doubt';

const nothing = (heard: Heard, why: Doubt): Understanding => ({
  kind: 'nothing',
  why,
  said: heard.text,
});

const intentOf = (reading: Reading): Intent | undefined =>
  reading.match.kind === 'phrase' ? reading.match.intent : undefined;

const found = (
  heard: Heard,
  reading: Reading,
  intent: Intent,
  why: Doubt | undefined,
): Understanding => {
  const confidence = Math.min(...reading.words.map((word) => word.confidence));
  const understood = { kind: 'intent', intent, said: heard.text, confidence } as const;
  return why === undefined
    ? { ...understood, certainty: 'sure' }
    : { ...understood, certainty: 'unsure', why };
};

const whyNothing = (reading: Reading): Doubt =>
  reading.words.length === 0
    ? doubts.silence
    : reading.unknownInside
      ? doubts.unknownInside
      : doubts.noPhrase;

/** What an utterance means, and whether it may act without asking back; with one recogniser's words alone. */
export const understand = (heard: Heard, context: VoiceContext): Understanding => {
  const reading = readHeard(heard, context);
  const intent = intentOf(reading);
  if (intent === undefined) return nothing(heard, whyNothing(reading));
  return found(heard, reading, intent, doubtOf(intent, reading, heard, context));
};

const numbersOf = (intent: Intent): readonly number[] =>
  intent.kind === 'value'
    ? [intent.value]
    : intent.kind === 'ambiguousValue'
      ? intent.candidates
      : [];

/** Two numbers heard for one: both are offered. */
const either = (a: Intent, b: Intent): Intent => {
  const candidates = [...new Set([...numbersOf(a), ...numbersOf(b)])];
  if (a.kind !== 'value' && a.kind !== 'ambiguousValue') return a;
  const { unit, label } = a;
  return candidates.length < 2 || numbersOf(b).length === 0
    ? a
    : {
        kind: 'ambiguousValue',
        candidates,
        ...(unit === undefined ? {} : { unit }),
        ...(label === undefined ? {} : { label }),
      };
};

/**
 * With the second recogniser's opinion, which also knows letters and words of talk:
 * where it hears other words, nothing acts; where it hears another phrase, it is asked which.
 */
export const understandPair = (
  main: Heard,
  second: Heard | undefined,
  context: VoiceContext,
): Understanding => {
  const alone = understand(main, context);
  if (second === undefined || alone.kind === 'nothing') return alone;
  const reading = readHeard(second, context);
  const other = intentOf(reading);
  const { intent } = alone;
  if (other === undefined)
    return reading.words.length > 0 && !reading.unknownInside
      ? nothing(main, doubts.talk)
      : { ...alone, certainty: 'unsure', why: doubts.heardTwoWays };
  if (!sameIntent(intent, other))
    return {
      ...alone,
      intent: either(intent, other),
      certainty: 'unsure',
      why: doubts.heardTwoWays,
    };
  const why = doubtOf(other, reading, second, context);
  return alone.certainty === 'sure' && why !== undefined
    ? { ...alone, certainty: 'unsure', why }
    : alone;
};
