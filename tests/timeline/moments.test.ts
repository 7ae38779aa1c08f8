import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import { replay } from '@/lib/job';
import {
  momentOf,
  pseudonyms,
  shownRow,
  snapshotEvery,
  stateAt,
  timelineOf,
  timesIn,
} from '@/lib/timeline';
import { Bay, event, opening } from '../job/driver';
import { doSteps } from '../job/hands';
import { hatchJob, lidJob } from '../job/lid-procedure';
import { throwsOfDice, walk } from '../job/walk';

vi.setConfig({ testTimeout: 60_000 });

const names = {
  person: (id: string) => id.toUpperCase(),
  bay: (id: string) => id,
  tool: (id: string) => id,
  sounds: true,
  soundDeletedAt: () => undefined as string | undefined,
  times: timesIn('UTC'),
};

/** A job of so many events: held and resumed again and again. */
const longJob = (length: number) => [
  opening(hatchJob),
  ...Array.from({ length: length - 1 }, (_, at) =>
    event(
      at + 2,
      at % 2 === 0 ? { type: 'jobHeld', reason: { text: 'parts' } } : { type: 'jobResumed' },
    ),
  ),
];

test('the state at any moment is what replaying the events up to then makes', () => {
  fc.assert(
    fc.property(throwsOfDice(60), fc.nat(), (dice, pick) => {
      const { log, revision } = walk(lidJob, dice);
      const at = 1 + (pick % log.length);
      const timeline = timelineOf(revision, log);
      expect(timeline.rows).toHaveLength(log.length);
      const replayed = replay(revision, log.slice(0, at));
      expect(replayed.ok && stateAt(timeline, at)).toStrictEqual(replayed.ok && replayed.value);
    }),
    { numRuns: 20 },
  );
});

test('the same holds around the states that are kept of a long job', () => {
  const events = longJob(2 * snapshotEvery + 10);
  const timeline = timelineOf(hatchJob, events);
  expect(timeline.snapshots.map(({ seq }) => seq)).toEqual([
    1,
    snapshotEvery + 1,
    2 * snapshotEvery + 1,
  ]);
  for (const at of [1, snapshotEvery, snapshotEvery + 1, snapshotEvery + 2, events.length]) {
    const replayed = replay(hatchJob, events.slice(0, at));
    expect(replayed.ok && stateAt(timeline, at)).toStrictEqual(replayed.ok && replayed.value);
  }
  expect(stateAt(timeline, 0)).toBeUndefined();
  expect(stateAt(timeline, events.length + 1)).toBeUndefined();
});

test('a record that does not follow from itself is replayed up to there', () => {
  const events = longJob(6).filter(({ seq }) => seq !== 4);
  const timeline = timelineOf(hatchJob, events);
  expect(timeline.rows).toHaveLength(3);
  expect(timeline.last?.seq).toBe(3);
  expect(timeline.stopped?.seq).toBe(4);
});

test('a moment says step, what is loose, what is off, the last reading and the fluids', () => {
  const bay = new Bay(lidJob);
  doSteps(bay, 'drain', 'open-lid');
  const timeline = timelineOf(lidJob, bay.log);
  const state = stateAt(timeline, bay.state.seq);
  if (state === undefined) throw new Error('no state');
  expect(momentOf(state, names)).toMatchObject({
    phase: 'running',
    bay: 'bay-1',
    where: 'Step 2 of 12, Take off the lid. 2 settled.',
    partsOff: ['Lid', 'Gasket', 'Locking washer', 'Lamp'],
    fluids: [{ name: 'Oil', stands: 'out, 3 L drained' }],
    last: { what: 'Oil drained', read: '3 L', verdict: 'noFigure' },
    stepsOpen: 10,
  });
  expect(momentOf(state, names).loose).toContain('Lid bolts: off');
  expect(momentOf(state, names).ends.map(({ text }) => text)).toContain('Oil is out');
  const first = stateAt(timeline, 1);
  expect(first && momentOf(first, names)).toMatchObject({
    fluids: [{ name: 'Oil', stands: 'in' }],
    partsOff: ['Lamp'],
    stepsOpen: 12,
  });
});

test('who signed is named as whoever looks may see', () => {
  const bay = new Bay(hatchJob);
  doSteps(bay, 'look', 'open');
  bay.does(
    { type: 'looseEndSigned', looseEnd: 'partOff:hatch', mark: 'off ', reason: { text: 'so' } },
    'fred',
  );
  const { ends } = momentOf(bay.state, names);
  expect(ends.find(({ text }) => text === 'Hatch is off')?.signedBy).toBe('FRED');
});

test('people are numbered by role in the order in which they come up', () => {
  const bay = new Bay(hatchJob);
  bay.does({ type: 'foremanCalled' });
  bay.does({ type: 'foremanAnswered' }, 'fay');
  bay.does({ type: 'jobReassigned', bay: 'bay-1', mechanic: 'max', reason: { text: 'so' } }, 'fay');
  const who = pseudonyms(bay.log);
  expect(['mia', 'max', 'fay', 'nobody'].map(who)).toEqual([
    'Mechanic 1',
    'Mechanic 2',
    'Foreman 1',
    'Somebody',
  ]);
});

test('a row on the screen tells what became of an entry, and gives its sound only to whom it is for', () => {
  const bay = new Bay(hatchJob);
  const clip = '00000000-0000-4000-8000-0000000000cc';
  bay.does({ type: 'jobHeld', reason: { clip } });
  bay.does({ type: 'jobResumed' });
  doSteps(bay, 'open');
  bay.begin('close');
  const reading = { type: 'readingTaken', step: 'close', ask: 'torque', unit: 'N.m' } as const;
  bay.does({ ...reading, value: 14 });
  bay.does({ ...reading, value: 10 });
  const { rows, last } = timelineOf(hatchJob, bay.log);
  if (last === undefined) throw new Error('no state');
  const shown = rows.map((row) => shownRow(row, last, names));
  expect(shown[1]).toMatchObject({ what: 'Put on hold', reason: 'Spoken note', clip, who: 'MIA' });
  expect(rows[1] && shownRow(rows[1], last, { ...names, sounds: false })).not.toHaveProperty(
    'clip',
  );
  const gone = { ...names, soundDeletedAt: () => '2026-04-02T00:00:00.000Z' };
  expect(rows[1] && shownRow(rows[1], last, gone)).toMatchObject({
    details: ['The sound was deleted on Thursday 2 April 2026, as the shop has set'],
  });
  expect(shown.slice(-2)).toMatchObject([
    { verdict: 'outOfSpec', since: 'does not count any more', step: '3 Put on the hatch' },
    { verdict: 'inSpec', since: 'counts once its step is done' },
  ]);
});

test('times are written in the zone of the shop', () => {
  const { clock, day } = timesIn('America/New_York');
  // 1 March is before the change to summer time there: UTC−5.
  expect([clock('2025-03-01T03:04:05+00:00'), day('2025-03-01T03:04:05+00:00')]).toEqual([
    '22:04:05',
    'Friday 28 February 2025',
  ]);
});
