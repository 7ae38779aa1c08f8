import { describe, expect, it } from 'vitest';
import type { Outcome } from '@/components/microphone/measure/check';
import { judge, quantile, tally, type Hearing } from '@/lib/cli/hearing-score';
import type { Intent } from '@/lib/voice';

const outcome = (intent: Intent | undefined, certainty: 'sure' | 'unsure' = 'sure'): Outcome => ({
  understanding:
    intent === undefined
      ? { kind: 'nothing', why: '', said: '' }
      : { kind: 'intent', intent, certainty, said: '', confidence: 1 },
  heard: { text: '', words: [] },
  shownS: 2.3,
  shownComputeMs: 80,
  actedS: 3,
  actedComputeMs: 20,
});

const hearing = (
  meant: Intent | undefined,
  outcomes: readonly Outcome[],
  spoken: { value?: number; unit?: string } = {},
): Hearing => ({
  recording: { file: 'a/b.wav', say: 'x', group: 'a', ...spoken },
  meaning: outcome(meant).understanding,
  result: { durationS: 2, endOfSpeechS: 2, outcomes },
});

const value = (number: number): Intent => ({ kind: 'value', value: number });

describe('a phrase', () => {
  it('is right when its meaning is what was understood', () => {
    const verdict = judge(hearing({ kind: 'next' }, [outcome({ kind: 'next' })]));
    expect(verdict).toMatchObject({ kind: 'phrase', phraseRight: true, actedWrongly: false });
  });

  it('is not right when something else was done before', () => {
    const verdict = judge(
      hearing({ kind: 'next' }, [outcome({ kind: 'back' }), outcome({ kind: 'next' })]),
    );
    expect(verdict).toMatchObject({ phraseRight: false, actedWrongly: true });
  });

  it('is not heard when nothing came of it', () => {
    expect(judge(hearing({ kind: 'next' }, [outcome(undefined)]))).toMatchObject({
      notHeard: true,
      phraseRight: false,
    });
  });

  it('asks back when it is unsure, which is no wrong act', () => {
    expect(judge(hearing({ kind: 'next' }, [outcome({ kind: 'back' }, 'unsure')]))).toMatchObject({
      askedBack: true,
      actedWrongly: false,
      phraseRight: false,
    });
  });

  it('is as late as the sound needed plus the computing', () => {
    const { latency } = judge(hearing({ kind: 'next' }, [outcome({ kind: 'next' })]));
    expect(latency?.shownMs).toBeCloseTo(380);
    expect(latency?.actedMs).toBeCloseTo(1020);
  });
});

describe('what it takes', () => {
  const verdicts = (outcomes: readonly Outcome[]) => {
    const { atOnce, afterOneYes, phraseRight } = judge(hearing(value(133), outcomes));
    return { atOnce, afterOneYes, phraseRight };
  };

  it('is nothing more when nothing was asked', () => {
    expect(verdicts([outcome(value(133))])).toEqual({
      atOnce: true,
      afterOneYes: false,
      phraseRight: true,
    });
  });

  it('is one yes when the value was read back as it was said', () => {
    expect(verdicts([outcome(value(133), 'unsure')])).toEqual({
      atOnce: false,
      afterOneYes: true,
      phraseRight: true,
    });
    expect(verdicts([outcome(value(130), 'unsure')]).afterOneYes).toBe(false);
  });

  it('is more than a yes when a part was asked first, or which of several', () => {
    const part = [outcome(value(1), 'unsure'), outcome(value(133), 'unsure')];
    expect(verdicts(part)).toEqual({ atOnce: false, afterOneYes: false, phraseRight: true });
    const which = judge(
      hearing({ kind: 'ambiguousValue', candidates: [250, 2.5] }, [
        outcome({ kind: 'ambiguousValue', candidates: [250, 2.5] }, 'unsure'),
      ]),
    );
    expect(which).toMatchObject({ phraseRight: true, atOnce: false, afterOneYes: false });
  });

  it('is to say it again when a command was not sure', () => {
    const next = judge(hearing({ kind: 'next' }, [outcome({ kind: 'next' }, 'unsure')]));
    expect(next).toMatchObject({ phraseRight: true, atOnce: false, afterOneYes: false });
  });
});

describe('a value', () => {
  it('is right when the number is, and the unit is the one spoken or was not heard', () => {
    const spoken = { value: 120, unit: 'N.m' };
    const right = (intent: Intent): boolean | undefined =>
      judge(hearing(value(120), [outcome(intent)], spoken)).value?.right;
    expect(right({ kind: 'value', value: 120, unit: 'N.m' })).toBe(true);
    expect(right({ kind: 'value', value: 120 })).toBe(true);
    expect(right({ kind: 'value', value: 120, unit: '[lbf_av].[ft_i]' })).toBe(false);
    expect(right({ kind: 'value', value: 112 })).toBe(false);
  });

  it('that is wrong counts as accepted only when it was not asked back', () => {
    const wrong = (certainty: 'sure' | 'unsure'): boolean | undefined =>
      judge(hearing(value(120), [outcome(value(112), certainty)], { value: 120 })).value
        ?.wrongAccepted;
    expect(wrong('sure')).toBe(true);
    expect(wrong('unsure')).toBe(false);
  });

  it('taken from a part of the words is a wrong one, even if the whole came later', () => {
    const verdict = judge(
      hearing(value(133), [outcome(value(1)), outcome(value(133))], { value: 133 }),
    );
    expect(verdict.value).toEqual({ right: false, wrongAccepted: true });
  });
});

it('counts talk that is no phrase by whether anything acted on it', () => {
  const talk = [[], [outcome(undefined)], [outcome(value(7))], [outcome(value(7), 'unsure')]].map(
    (outcomes) => judge(hearing(undefined, outcomes)),
  );
  expect(tally(talk)).toMatchObject({ talk: 4, talkActedOn: 1, talkAskedBack: 1, phrases: 0 });
});

it('counts a broken file once, and in nothing else', () => {
  const broken = judge({
    ...hearing(value(1), [], { value: 1 }),
    result: { problem: 'it cannot be decoded', durationS: 0, outcomes: [] },
  });
  expect(tally([broken])).toMatchObject({ recordings: 1, unreadable: 1, phrases: 0, values: 0 });
});

it('takes quantiles by nearest rank', () => {
  expect(quantile([15, 20, 35, 40, 50], 0.4)).toBe(20);
  expect(quantile([15, 20, 35, 40, 50], 0.95)).toBe(50);
  expect(quantile([], 0.5)).toBeUndefined();
});
