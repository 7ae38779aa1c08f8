import { describe, expect, it } from 'vitest';
import type { Outcome } from '@/components/microphone/measure/check';
import { hearRates, kindsInTurn, noiseKindOf, ratesText } from '@/lib/cli/hearing-rates';
import type { Hearing } from '@/lib/cli/hearing-score';
import type { Understanding } from '@/lib/voice';

const next = (certainty: 'sure' | 'unsure'): Understanding => ({
  kind: 'intent',
  intent: { kind: 'next' },
  certainty,
  said: 'next',
  confidence: 1,
});
const nothing = (why = ''): Understanding => ({ kind: 'nothing', why, said: '' });

const hearing = (
  meaning: Understanding,
  found: readonly Understanding[],
  about: Partial<Hearing> = {},
): Hearing => ({
  recording: { file: 'a.wav', say: 'x', group: '.' },
  meaning,
  result: {
    durationS: 360,
    outcomes: found.map((understanding): Outcome => ({
      understanding,
      heard: { text: '', words: [] },
      shownS: 1,
      shownComputeMs: 0,
      actedS: 1,
      actedComputeMs: 0,
    })),
  },
  ...about,
});

describe('false acts', () => {
  it('are counted by the hour, apart for noise and for talk; a question is none', () => {
    const [all] = hearRates([
      hearing(nothing(), [next('sure'), next('sure'), next('unsure')], {
        noiseKind: 'grinder',
        noiseAlone: true,
      }),
      hearing(nothing(), [next('sure')]),
      hearing(nothing(), []),
    ]);
    expect(all).toMatchObject({
      noiseActs: { events: 2, hours: 0.1 },
      talkActs: { events: 1, hours: 0.2 },
      noiseQuestions: 1,
      talkQuestions: 0,
    });
  });

  it('are bounded by the length of the sound where there were none', () => {
    const [all] = hearRates([hearing(nothing(), [])]);
    if (all === undefined) throw new Error('there are no rates');
    expect(ratesText(all)).toContain('0 in 6.0 min (below 30.0 an hour, 95 %)');
  });
});

describe('phrases', () => {
  it('are counted by kind and level of the noise', () => {
    const noisy = { noiseKind: 'grinder', snrDb: 10 };
    const rates = hearRates([
      hearing(next('sure'), [next('sure')], noisy),
      hearing(next('sure'), [next('unsure')], noisy),
      hearing(next('sure'), [nothing('too loud, say it again')], noisy),
      hearing(next('sure'), [next('sure')], { ...noisy, snrDb: 20 }),
    ]);
    expect(rates.map(({ group }) => group)).toEqual([
      'all',
      'grinder at 20 dB',
      'grinder at 10 dB',
    ]);
    expect(rates[2]).toMatchObject({
      phrases: 3,
      phrasesAtOnce: 1,
      phrasesAfterOneYes: 0,
      asksBack: 1,
      tooLoud: 1,
    });
  });

  it('are counted by voice, where it is known, and by the level of the noise', () => {
    const by = (voice: string): Partial<Hearing> => ({
      recording: { file: 'a.wav', say: 'x', group: 'clean', voice },
    });
    const rates = hearRates([
      hearing(next('sure'), [next('sure')], by('mira')),
      hearing(next('sure'), [nothing()], { ...by('mira'), snrDb: 10 }),
      hearing(next('sure'), [next('sure')], by('ana')),
    ]);
    expect(
      rates.slice(1).map(({ group, phrases, phrasesAtOnce }) => [group, phrases, phrasesAtOnce]),
    ).toEqual([
      ['voice ana, clean', 1, 1],
      ['voice mira, clean', 1, 1],
      ['voice mira, clean at 10 dB', 1, 0],
    ]);
  });
});

describe('the kind of a noise', () => {
  it('is its folder, or its name without numbers', () => {
    expect(['saw/one.wav', 'grinder-2.wav', 'hiss.flac', '7.wav'].map(noiseKindOf)).toEqual([
      'saw',
      'grinder',
      'hiss',
      '7.wav',
    ]);
  });

  it('comes in turn with the others', () => {
    expect(kindsInTurn(['a/1.wav', 'a/2.wav', 'a/3.wav', 'b/1.wav', 'c-1.wav', 'c-2.wav'])).toEqual(
      ['a/1.wav', 'b/1.wav', 'c-1.wav', 'a/2.wav', 'c-2.wav', 'a/3.wav'],
    );
  });
});
