import { behindCall, type CallWord } from './call-word';
import { doubts } from './doubt';
import type { Heard, Understanding, VoiceContext } from './intent';
import { understandPair } from './understand';
import { unknownWord } from './unknown-word';

/** For the screen, where a phrase was clear but the kiosk was not called. */
export const callFirst = (word: CallWord): string => `begin with “${word}”`;

const beginsS = ({ words }: Heard): number =>
  words.find(({ text }) => text !== unknownWord)?.startS ?? Number.POSITIVE_INFINITY;

/**
 * Understands at a kiosk that may be called by a word. Where it is, only what both recognisers heard behind that word
 * counts, or what began while it needed none (`openUntilS`, in seconds of sound). Anything else is no matter of the
 * kiosk's, and is not even shown; but for a clear phrase it is said how to begin.
 */
export const understandCalled = (
  main: Heard,
  second: Heard | undefined,
  context: VoiceContext,
  openUntilS: number,
): Understanding => {
  const { callWord } = context;
  if (callWord === undefined) return understandPair(main, second, context);
  const called = behindCall(main, callWord);
  const secondCalled = second === undefined ? undefined : behindCall(second, callWord);
  if (called !== undefined && (second === undefined || secondCalled !== undefined))
    return { ...understandPair(called, secondCalled, context), said: main.text };
  const uncalled = understandPair(main, second, context);
  if (called === undefined && beginsS(main) <= openUntilS) return uncalled;
  const clear = uncalled.kind === 'intent' && uncalled.certainty === 'sure';
  const why = clear ? callFirst(callWord) : doubts.notCalled;
  return { kind: 'nothing', why, said: main.text };
};
