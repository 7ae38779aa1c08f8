import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { looseEndKinds, looseEnds, type LooseEnd } from '@/lib/ledger';
import type { Revision } from '@/lib/procedure';
import type { Bay } from '../job/driver';
import { workOff } from '../job/hands';
import { hatchJob, lidJob } from '../job/lid-procedure';
import { happeningOf, throwsOfDice, walk } from '../job/walk';
import { isSettled, openThings } from './oracle';

// Walks are long and machines may be busy; how fast they are is not what is tested.
vi.setConfig({ testTimeout: 120_000 });

const jobs: readonly (readonly [string, Revision])[] = [
  ['the lid job', lidJob],
  ['the hatch job', hatchJob],
];
const keys = (ends: readonly LooseEnd[], ...kinds: readonly LooseEnd['kind'][]) =>
  ends
    .filter(({ kind }) => kinds.includes(kind))
    .map(({ key }) => key)
    .sort();

/** Of these a rework only ever adds. */
const physical: readonly LooseEnd['kind'][] = [
  'fluidOut',
  'partOff',
  'kitUnaccounted',
  'fastenerOpen',
  'threadLockerDue',
  'replacementDue',
  'deviationUndecided',
  'stepOpen',
];

describe.each(jobs)('the ledger of %s', (_, revision) => {
  test('shows just what is open on the vehicle, told by looking back at what happened last', () => {
    fc.assert(
      fc.property(throwsOfDice(60), (dice) => {
        walk(revision, dice, ({ state, log }, _tried, accepted) => {
          if (!accepted) return;
          const ends = looseEnds(state);
          const open = openThings(revision, log);
          for (const kind of ['fluidOut', 'partOff', 'fastenerOpen', 'threadLockerDue'] as const)
            expect(keys(ends, kind)).toEqual([...open[kind]].sort());
          // A foreman may have accepted a part used again: then the ledger shows less.
          const due = keys(ends, 'replacementDue');
          const forgiven = state.deviations.some(
            ({ kind, decision }) => kind === 'reusedAgainstSheet' && decision !== undefined,
          );
          if (!forgiven) expect(due).toEqual([...open.replacementDue].sort());
          else expect(open.replacementDue).toEqual(expect.arrayContaining(due));
        });
      }),
      { numRuns: 30 },
    );
  });

  test('is empty just when nothing is open', () => {
    let settled = 0;
    fc.assert(
      fc.property(throwsOfDice(40), throwsOfDice(6), (dice, more) => {
        const agree = ({ state, log }: Bay): void => {
          const empty = looseEnds(state).length === 0;
          if (empty) settled += 1;
          expect(empty).toBe(isSettled(state, log));
        };
        const workers = dice.map((one) => ({ ...one, actor: 'mia' as const }));
        const bay = walk(revision, workers, agree);
        if (bay.state.phase === 'closed') return;
        workOff(bay);
        agree(bay);
        for (const one of more) {
          bay.try(happeningOf(bay, one), one.actor);
          agree(bay);
        }
      }),
      { numRuns: 30 },
    );
    // Both answers were really met.
    expect(settled).toBeGreaterThan(30);
  });

  test('only grows by rework, for what is physically open', () => {
    let reworks = 0;
    fc.assert(
      fc.property(throwsOfDice(60), fc.nat(20), (dice, which) => {
        const bay = walk(revision, dice);
        if (bay.state.phase !== 'running') return;
        const done = revision.steps.filter(({ id }) => bay.state.steps[id]?.status !== 'open');
        const step = done[which % Math.max(1, done.length)]?.id;
        if (step === undefined) return;
        // Rework that a foreman asked for is settled by being taken up.
        const standing = looseEnds(bay.state).filter(({ mark }) => mark !== 'rework due');
        const before = keys(standing, ...physical);
        bay.does({ type: 'stepReopened', step, reason: { text: 'again' } });
        reworks += 1;
        expect(keys(looseEnds(bay.state), ...physical)).toEqual(expect.arrayContaining(before));
      }),
      { numRuns: 30 },
    );
    // Chance decides how many walks come to a step that is done: enough of them must, for this to show anything.
    expect(reworks).toBeGreaterThan(5);
  });

  test('lists by kind, each end once, in plain words, with a step that exists', () => {
    fc.assert(
      fc.property(throwsOfDice(60), (dice) => {
        const { state } = walk(revision, dice);
        const ends = looseEnds(state);
        const ranks = ends.map(({ kind }) => looseEndKinds.indexOf(kind));
        expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
        expect(new Set(ends.map(({ key }) => key)).size).toBe(ends.length);
        for (const { text, detail, step } of ends) {
          expect(`${text} ${detail ?? ''}`).not.toMatch(/undefined|null|NaN|-bolts|lid-|hub-/);
          expect(step === undefined || revision.steps.some(({ id }) => id === step)).toBe(true);
        }
      }),
      { numRuns: 30 },
    );
  });
});
