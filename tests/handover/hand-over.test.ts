import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { demoProcedures } from '@/demo';
import { handOver, handOverSpeech, mostWords, type HandOver } from '@/lib/handover';
import { Bay } from '../job/driver';
import { doAllOpen, doSteps, workOff } from '../job/hands';
import { lidJob } from '../job/lid-procedure';
import { throwsOfDice, walk } from '../job/walk';

const apart = (): Bay => {
  const bay = new Bay(lidJob);
  doSteps(bay, 'drain', 'open-lid');
  return bay;
};

describe('the summary of a job that somebody takes over', () => {
  test('says where it stands and why it stood still', () => {
    const bay = apart();
    bay.does({ type: 'jobHeld', reason: { text: 'Waiting for parts' } });
    const { where, hold } = handOver(bay.state);
    expect(where).toBe('Step 2 of 12, Take off the lid. 2 settled.');
    expect(hold).toBe('Waiting for parts');
  });

  test('says what is out, off and loose, fasteners by group and not one by one', () => {
    const { loose } = handOver(apart().state);
    expect(loose).toContain('Oil is out');
    expect(loose).toContain('Lid bolts: off');
    expect(loose.filter((line) => line.startsWith('Lid bolts'))).toHaveLength(1);
  });

  test('says which tray holds what, in the place named like its hole', () => {
    const { trays } = handOver(apart().state);
    expect(trays[0]?.tray).toMatch(/^tray /);
    expect(trays.flatMap(({ holds }) => holds)).toContain('Lid bolts in places 1, 2, 3');
  });

  test('says what was heard last, in the words that were said', () => {
    const bay = apart();
    bay.begin('lamp');
    bay.does({ type: 'readingTaken', step: 'lamp', ask: 'supply', value: 12, unit: 'V' });
    expect(handOver(bay.state).lastHeard).toMatch(/: 12 V$/);
  });

  test('says what is due before the vehicle is started or moved', () => {
    const { before } = handOver(apart().state);
    expect(before[0]).toBe('Fill: Oil');
    expect(before.at(-1)).toMatch(/^Tighten to the final pass: .*Lid bolts/);
  });

  test('has nothing loose and nothing due once all is settled', () => {
    const bay = new Bay(lidJob);
    doAllOpen(bay);
    workOff(bay);
    expect(handOver(bay.state)).toMatchObject({ loose: [], trays: [], before: [] });
    expect(handOverSpeech(handOver(bay.state))).toContain('nothing is open on the vehicle');
  });
});

const count = (text: string): number => text.split(/\s+/).length;

describe('the spoken summary', () => {
  test('lasts at most twenty seconds, and says first where it stands and what is due', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(lidJob, ...demoProcedures),
        throwsOfDice(40),
        (revision, dice) => {
          const summary = handOver(walk(revision, dice).state);
          const speech = handOverSpeech(summary);
          expect(count(speech)).toBeLessThanOrEqual(mostWords);
          expect(speech.startsWith(summary.where)).toBe(true);
        },
      ),
      { numRuns: 60 },
    );
  });

  test('says that there is more on the screen where it had to leave something out', () => {
    const long: HandOver = {
      where: 'Step 2 of 9, Open it.',
      hold: undefined,
      loose: Array.from({ length: 20 }, (_, n) => `Cover bolts ${n}: off`),
      trays: [],
      lastHeard: undefined,
      before: ['Fill: Oil'],
    };
    expect(handOverSpeech(long)).toMatch(/Fill: Oil\..*The rest is on the screen\.$/);
  });
});

test('every loose thing that the job knows is in the summary, whatever was done', () => {
  fc.assert(
    fc.property(throwsOfDice(60), (dice) => {
      const { state } = walk(lidJob, dice);
      const { loose, before } = handOver(state);
      for (const fluid of lidJob.fluids)
        expect(loose.includes(`${fluid.name} is out`)).toBe(
          state.fluids[fluid.id]?.state === 'out',
        );
      for (const group of lidJob.groups) {
        const open = group.fasteners.some(
          ({ id }) => !['untouched', 'final'].includes(state.fasteners[id]?.stage ?? ''),
        );
        expect(loose.some((line) => line.startsWith(`${group.name}:`))).toBe(open);
        expect(before.some((line) => line.startsWith('Tighten') && line.includes(group.name))).toBe(
          open,
        );
      }
    }),
    { numRuns: 60 },
  );
});
