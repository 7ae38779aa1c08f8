import { expect, it } from 'vitest';
import { doubts, understandPair, type Heard, type VoiceContext } from '@/lib/voice';

const context: VoiceContext = { intents: ['value', 'next'], labels: [], steps: 0 };

const heard = (say: string, speechOverLoudNoiseDb?: number): Heard => ({
  text: say,
  words: say
    .split(' ')
    .map((text, i) => ({ text, confidence: 1, startS: i / 3, endS: i / 3 + 0.3 })),
  speechOverNoiseDb: 25,
  ...(speechOverLoudNoiseDb === undefined ? {} : { speechOverLoudNoiseDb }),
});

const why = (one: Heard): string | undefined => {
  const understood = understandPair(one, one, context);
  return understood.kind === 'intent' ? understood.why : 'nothing';
};

it('a number is read back that hardly stood out from a noise that comes and goes, however quiet it is in between', () => {
  expect(why(heard('one nine one', 11.9))).toBe(doubts.noise);
  expect(why(heard('one nine one', 12))).toBeUndefined();
  expect(why(heard('one nine one'))).toBeUndefined();
});

it('a command is not: its words are unlike any other', () => {
  expect(why(heard('next', 3))).toBeUndefined();
});
