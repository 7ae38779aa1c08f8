import { describe, expect, test } from 'vitest';
import { notesOf, reconcile, type Conflict } from '@/lib/outbox';
import { Bay, event } from '../job/driver';
import { doSteps } from '../job/hands';
import { lidJob } from '../job/lid-procedure';

const why = { text: 'so it is' };

/** The lid is off; both kiosks have seen so much. */
const lidOff = (): Bay => {
  const bay = new Bay(lidJob);
  doSteps(bay, 'drain', 'open-lid');
  return bay;
};

const id = (n: number): string => `00000000-0000-4000-9000-${String(n).padStart(12, '0')}`;

/** Done at this kiosk on top of what both have seen: a step begun and a voltage read. */
const mineAfter = (seq: number) => [
  { ...event(seq + 1, { type: 'stepBegun', step: 'lamp' }), id: id(1) },
  {
    ...event(seq + 2, { type: 'readingTaken', step: 'lamp', ask: 'supply', value: 12, unit: 'V' }),
    id: id(2),
  },
];

const compared = (bay: Bay, mine: ReturnType<typeof mineAfter>, message?: string) => {
  const result = reconcile({ revision: lidJob, events: bay.log }, mine, message);
  if (!result.ok) throw new Error(result.error);
  return result.value;
};

const conflictOf = (...asked: Parameters<typeof compared>): Conflict => {
  const result = compared(...asked);
  if (result.kind !== 'conflict') throw new Error('no conflict');
  return result.conflict;
};

describe('what waits here, beside the job as the store has it', () => {
  test('was stored long ago, and only the answer was lost: nothing waits any more', () => {
    const bay = lidOff();
    const mine = mineAfter(bay.state.seq);
    bay.does({ type: 'stepBegun', step: 'lamp' });
    const stored = bay.log.at(-1);
    const same = mine.slice(0, 1).map((one) => ({ ...one, id: stored?.id ?? '' }));
    expect(compared(bay, same)).toMatchObject({ kind: 'goOn', waiting: [] });
  });

  test('goes on top by itself where a foreman only answered from afar', () => {
    const bay = lidOff();
    const mine = mineAfter(bay.state.seq);
    bay.does({ type: 'foremanCalled' });
    bay.does({ type: 'foremanAnswered' }, 'fred');
    const result = compared(bay, mine);
    expect(result.kind).toBe('goOn');
    expect(result.kind === 'goOn' && result.waiting.map(({ seq }) => seq)).toEqual([
      bay.state.seq + 1,
      bay.state.seq + 2,
    ]);
  });

  test('is a conflict with both sides where somebody worked on the job elsewhere', () => {
    const bay = lidOff();
    const mine = mineAfter(bay.state.seq);
    bay.does({ type: 'stepBegun', step: 'lamp' }, 'max');
    const conflict = conflictOf(bay, mine);
    expect(conflict.mine).toEqual(mine);
    expect(conflict.theirs).toEqual(bay.log.slice(-1));
    expect(conflict.onTop.ok).toBe(true);
  });

  test('says why it cannot go on top where the rules do not allow it now', () => {
    const bay = lidOff();
    const mine = mineAfter(bay.state.seq);
    bay.does({ type: 'jobHeld', reason: why }, 'fred');
    expect(conflictOf(bay, mine).onTop).toEqual({
      ok: false,
      error: 'The job is on hold: resume it first.',
    });
  });

  test('is left to a person where the store says no and nobody else wrote anything', () => {
    const bay = lidOff();
    const conflict = conflictOf(bay, mineAfter(bay.state.seq), 'This job is in another bay.');
    expect(conflict).toMatchObject({ theirs: [], message: 'This job is in another bay.' });
  });
});

describe('what is set aside', () => {
  const clock = (instant: string): string => instant.slice(11, 16);
  const apart = (): { readonly bay: Bay; readonly conflict: Conflict } => {
    const bay = lidOff();
    const mine = mineAfter(bay.state.seq);
    bay.does({ type: 'stepBegun', step: 'lamp' }, 'max');
    return { bay, conflict: conflictOf(bay, mine) };
  };

  test('is told in the job, word for word, as a deviation that a foreman must look at', () => {
    const { bay, conflict } = apart();
    const [note, ...more] = notesOf(conflict, clock);
    expect(more).toEqual([]);
    expect(note?.type === 'deviationNoted' && note.reason.text).toMatch(
      /^Done at the kiosk, but never stored, because the job had gone on elsewhere: \d\d:\d\d Step \d+, .*: begun; \d\d:\d\d .*: 12 V$/,
    );
    if (note !== undefined) bay.does(note);
    expect(bay.state.deviations.at(-1)?.decision).toBeUndefined();
  });

  test('takes as many notes as it needs, and leaves nothing out', () => {
    const { conflict } = apart();
    const long = Array.from({ length: 60 }, (_, n) => ({
      ...event(90 + n, {
        type: 'deviationNoted',
        kind: 'anotherWay',
        step: 'lamp',
        reason: { text: `${'word '.repeat(20)}number ${n}` },
      }),
      id: id(100 + n),
    }));
    const notes = notesOf({ ...conflict, mine: long }, clock);
    const texts = notes.map((note) => (note.type === 'deviationNoted' ? note.reason.text : ''));
    expect(texts.length).toBeGreaterThan(3);
    expect(Math.max(...texts.map((text) => text?.length ?? 0))).toBeLessThanOrEqual(2_000);
    for (let n = 0; n < 60; n += 1)
      expect(texts.filter((text) => text?.match(new RegExp(`number ${n}(;|$)`)))).toHaveLength(1);
  });

  test('cannot be told in a job that is closed', () => {
    const { conflict } = apart();
    expect(notesOf({ ...conflict, job: { ...conflict.job, phase: 'closed' } }, clock)).toEqual([]);
  });
});
