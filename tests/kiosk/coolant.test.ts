import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { demoProcedures } from '@/demo';
import { coolantMixes, currentStep } from '@/lib/kiosk';
import type { Revision } from '@/lib/procedure';
import { coolantJob } from '../job/coolant-procedure';
import { Bay } from '../job/driver';

const atFill = (filter: 'reused' | 'replaced' = 'replaced', revision = coolantJob()): Bay => {
  const bay = new Bay(revision);
  for (const ask of ['drained', 'spilled'])
    bay.does({ type: 'readingTaken', step: 'drain', ask, value: 1, unit: 'L' });
  bay.does({ type: 'stepDone', step: 'drain' });
  bay.begin('filter');
  bay.does({
    type: 'answerGiven',
    step: 'filter',
    ask: 'which',
    answer: { kind: 'choice', option: filter, reason: { text: 'clean' } },
  });
  bay.does({ type: 'stepDone', step: 'filter' });
  bay.begin('fill');
  return bay;
};
const texts = (bay: Bay): readonly string[] =>
  coolantMixes(bay.state, currentStep(bay.state)).map(({ text }) => text);

const withStrength = (strength: number): Revision => {
  const revision = coolantJob();
  return {
    ...revision,
    steps: revision.steps.map((step) => ({
      ...step,
      effects: step.effects.map((effect) =>
        effect.kind === 'fills' ? { ...effect, strength } : effect,
      ),
    })),
  };
};

describe('a step that fills coolant of a wanted strength', () => {
  test('says how much concentrate and how much water', () => {
    expect(texts(atFill())).toEqual(['Coolant 50 %: 4.00 L concentrate + 4.00 L water = 8.00 L']);
  });

  test('needs less where the filter stays', () => {
    expect(texts(atFill('reused'))).toEqual([
      'Coolant 50 %: 3.60 L concentrate + 3.60 L water = 7.20 L',
    ]);
  });

  test('mixes only what is not poured back, as soon as that is read', () => {
    const bay = atFill();
    bay.does({ type: 'readingTaken', step: 'fill', ask: 'returned', value: 5.5, unit: 'L' });
    expect(texts(bay)).toEqual(['Coolant 50 %: 1.25 L concentrate + 1.25 L water = 2.50 L']);
  });

  test('shows parts that add up', () => {
    expect(texts(atFill('replaced', withStrength(1 / 3)))).toEqual([
      'Coolant 33.3 %: 2.67 L concentrate + 5.33 L water = 8.00 L',
    ]);
  });

  test('gives parts that make the whole at that strength', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 1, noNaN: true }), (strength) => {
        const bay = atFill('replaced', withStrength(strength));
        const [mix] = coolantMixes(bay.state, currentStep(bay.state));
        expect(mix?.totalL).toBe(8);
        expect((mix?.concentrateL ?? 0) + (mix?.waterL ?? 0)).toBeCloseTo(8, 12);
        expect((mix?.concentrateL ?? 0) / 8).toBeCloseTo(strength, 12);
      }),
      { numRuns: 50 },
    );
  });

  test('other steps mix nothing', () => {
    const bay = new Bay(coolantJob());
    expect(texts(bay)).toEqual([]);
  });
});

test('the demo cover is filled with half concentrate', () => {
  const cover = demoProcedures.find(({ procedure }) => procedure === 'front-cover-reseal');
  if (cover === undefined) throw new Error('the demo has changed');
  const bay = new Bay(cover);
  const fill = cover.steps.find(({ id }) => id === 'fill-coolant');
  if (fill === undefined) throw new Error('the demo has changed');
  expect(coolantMixes(bay.state, fill).map(({ text }) => text)).toEqual([
    'Coolant 50 %: 4.25 L concentrate + 4.25 L water = 8.50 L',
  ]);
});
