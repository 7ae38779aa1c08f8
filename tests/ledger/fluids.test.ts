import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { balanceFluid, fillLimits } from '@/lib/fluids';
import { looseEnds } from '@/lib/ledger';
import type { Revision } from '@/lib/procedure';
import { Bay } from '../job/driver';
import { coolantJob, type Use } from '../job/coolant-procedure';

type Volumes = Readonly<Record<Use, number>> & { readonly filter?: 'reused' | 'replaced' };

/** The job done with these volumes, litres. */
const filled = ({ filter = 'replaced', ...litres }: Volumes, revision = coolantJob()): Bay => {
  const bay = new Bay(revision);
  const read = (step: string, ask: Use): void => {
    bay.does({ type: 'readingTaken', step, ask, value: litres[ask], unit: 'L' });
  };
  const done = (step: string): void => {
    bay.does({ type: 'stepDone', step });
  };
  read('drain', 'drained');
  read('drain', 'spilled');
  done('drain');
  bay.begin('filter');
  bay.does({
    type: 'answerGiven',
    step: 'filter',
    ask: 'which',
    answer: { kind: 'choice', option: filter, reason: { text: 'clean' } },
  });
  done('filter');
  bay.begin('fill');
  read('fill', 'returned');
  read('fill', 'filled');
  done('fill');
  return bay;
};

const fluidEnds = (bay: Bay) => looseEnds(bay.state).filter(({ kind }) => kind.startsWith('fluid'));
const said = (volumes: Volumes, revision?: Revision): readonly string[] =>
  fluidEnds(filled(volumes, revision)).map(({ text, detail = '' }) => `${text}: ${detail}`);

describe('a fluid with every volume read', () => {
  test('balances drained and spilled against returned and new', () => {
    expect(said({ drained: 7.5, spilled: 0.4, returned: 6, filled: 2 })).toEqual([]);
  });

  test('keeps all four volumes', () => {
    const bay = filled({ drained: 7.5, spilled: 0.4, returned: 6, filled: 2 });
    expect(bay.state.fluids['coolant']).toEqual({
      state: 'refilled',
      drainedL: 7.5,
      spilledL: 0.4,
      returnedL: 6,
      filledL: 2,
    });
  });

  test('says by how much it is under- or overfilled', () => {
    expect(said({ drained: 7.4, spilled: 0.1, returned: 6, filled: 1.5 })).toEqual([
      'Coolant is underfilled: 7.5 L went in; 7.7 L to 8.3 L is due: 0.2 L too little.',
    ]);
    expect(said({ drained: 8.2, spilled: 0, returned: 6, filled: 2.5 })).toEqual([
      'Coolant is overfilled: 8.5 L went in; 7.7 L to 8.3 L is due: 0.2 L too much.',
    ]);
  });

  test('holds less while its filter stays', () => {
    const volumes = { drained: 7.2, spilled: 0, returned: 0, filled: 7.2 };
    expect(said({ ...volumes, filter: 'reused' })).toEqual([]);
    expect(said({ ...volumes, filter: 'replaced' })).toEqual([
      'Coolant is underfilled: 7.2 L went in; 7.7 L to 8.3 L is due: 0.5 L too little.',
    ]);
  });

  test('cannot have more poured back than was drained', () => {
    expect(said({ drained: 6, spilled: 2, returned: 7, filled: 1 })).toEqual([
      'Coolant does not balance: More was poured back than was drained.',
    ]);
  });

  test('that must be new is a loose end once any was poured back', () => {
    const revision = coolantJob({ mayReturn: false });
    expect(said({ drained: 8, spilled: 0, returned: 1.2, filled: 6.8 }, revision)).toEqual([
      'Coolant was poured back: 1.2 L of the old was poured back; the sheet wants all of it new.',
    ]);
    expect(said({ drained: 8, spilled: 0, returned: 0, filled: 8 }, revision)).toEqual([]);
  });

  test('has a mark that changes with each volume and with the filter', () => {
    const wrong = { drained: 7, spilled: 0, returned: 0, filled: 9 } as const;
    const marks = [
      wrong,
      { ...wrong, drained: 7.1 },
      { ...wrong, spilled: 0.1 },
      { ...wrong, returned: 0.1 },
      { ...wrong, filled: 9.1 },
      { ...wrong, filter: 'reused' as const },
    ].map((volumes) => fluidEnds(filled(volumes))[0]?.mark);
    expect(new Set(marks).size).toBe(6);
  });

  test('is a loose end just where the balance has findings, and says them', () => {
    const tenth = fc.integer({ min: 0, max: 100 }).map((n) => n / 10);
    fc.assert(
      fc.property(
        tenth,
        tenth,
        tenth,
        tenth,
        fc.boolean(),
        (drained, spilled, back, anew, kept) => {
          const returned = Math.min(back, drained);
          const filter = kept ? 'reused' : 'replaced';
          const balance = balanceFluid(
            { drainedL: drained, spilledL: spilled, returnedL: returned, newL: anew },
            fillLimits(kept ? 7.2 : 8, 0.3),
            0.3,
          );
          if (!balance.ok) throw new Error(balance.error.message);
          const ends = fluidEnds(filled({ drained, spilled, returned, filled: anew, filter }));
          expect(ends.map(({ detail }) => detail)).toEqual(
            balance.value.findings.length === 0 ? [] : [balance.value.findings.join(' ')],
          );
        },
      ),
      { numRuns: 60 },
    );
  });
});

test('the mark of a job that asks only what was drained and filled stays as it ever was', () => {
  const revision = coolantJob();
  const plain: Revision = {
    ...revision,
    fluids: revision.fluids.map(({ filter: _, ...fluid }) => fluid),
    steps: revision.steps.map((step) => ({
      ...step,
      asks: step.asks.filter(({ id }) => id !== 'spilled' && id !== 'returned'),
    })),
  };
  const bay = new Bay(plain);
  bay.does({ type: 'readingTaken', step: 'drain', ask: 'drained', value: 7, unit: 'L' });
  bay.does({ type: 'stepDone', step: 'drain' });
  bay.does({ type: 'stepLeftOut', step: 'filter', reason: { text: 'none' } });
  bay.begin('fill');
  bay.does({ type: 'readingTaken', step: 'fill', ask: 'filled', value: 9, unit: 'L' });
  bay.does({ type: 'stepDone', step: 'fill' });
  expect(fluidEnds(bay).map(({ mark }) => mark)).toEqual(['drained 7 filled 9']);
});
