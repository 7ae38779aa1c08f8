import { expect, it } from 'vitest';
import { causesText, hearCauses } from '@/lib/cli/hearing-causes';
import type { Hearing } from '@/lib/cli/hearing-score';
import type { Understanding } from '@/lib/voice';

const value = (number: number, why?: string): Understanding => ({
  kind: 'intent',
  intent: { kind: 'value', value: number },
  said: '',
  confidence: 1,
  ...(why === undefined ? { certainty: 'sure' } : { certainty: 'unsure', why }),
});
const nothing = (why: string): Understanding => ({ kind: 'nothing', why, said: '' });

const hearing = (found: readonly Understanding[], snrDb?: number): Hearing => ({
  recording: { file: 'a.wav', say: 'seven', group: 'clean', value: 7 },
  meaning: value(7),
  ...(snrDb === undefined ? {} : { snrDb }),
  result: {
    durationS: 1,
    outcomes: found.map((understanding) => ({
      understanding,
      heard: { text: '', words: [] },
      shownS: 1,
      shownComputeMs: 0,
      actedS: 1,
      actedComputeMs: 0,
    })),
  },
});

it('says of each phrase what became of it and why, by level of the noise', () => {
  const causes = hearCauses([
    hearing([value(7)]),
    hearing([value(7)]),
    hearing([value(11)]),
    hearing([value(7, 'it was not heard clearly')], 10),
    hearing([value(11, 'it was not heard clearly')], 10),
    hearing([nothing('too loud, say it again')], 10),
    hearing([], 10),
  ]);
  expect(causesText(causes).split('\n')).toEqual([
    '| what became of it | clean | clean, 10 dB |',
    '| --- | ---: | ---: |',
    '| nothing: no words | 0 | 1 |',
    '| nothing: too loud, say it again | 0 | 1 |',
    '| right at once | 2 | 0 |',
    '| right, asked: it was not heard clearly | 0 | 1 |',
    '| wrong, asked: it was not heard clearly | 0 | 1 |',
    '| wrong, taken unasked | 1 | 0 |',
  ]);
});

it('leaves out talk and noise', () => {
  const talk: Hearing = { ...hearing([value(7)]), meaning: nothing('') };
  expect(hearCauses([talk, { ...hearing([]), noiseAlone: true }]).rows).toEqual([]);
});
