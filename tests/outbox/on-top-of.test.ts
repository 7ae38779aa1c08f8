import { expect, test } from 'vitest';
import { onTopOf } from '@/lib/outbox';
import { Bay, event } from '../job/driver';
import { doSteps } from '../job/hands';
import { lidJob } from '../job/lid-procedure';

const why = { text: 'so it is' };

/** The lid is off and the foreman was called; the mechanic's kiosk has seen so much. */
const called = (): Bay => {
  const bay = new Bay(lidJob);
  doSteps(bay, 'drain', 'open-lid');
  bay.does({ type: 'foremanCalled' });
  return bay;
};

test('a reading taken while the foreman answered from elsewhere is put on top, as it was said', () => {
  const bay = called();
  const next = bay.state.seq + 1;
  const mine = [
    event(next, { type: 'stepBegun', step: 'lamp' }),
    event(next + 1, { type: 'readingTaken', step: 'lamp', ask: 'supply', value: 12, unit: 'V' }),
  ];
  bay.does({ type: 'foremanAnswered' }, 'fred');
  const onTop = onTopOf(bay.state, mine);
  const again = onTop.ok ? onTop.value : undefined;
  expect(again?.events.map(({ seq }) => seq)).toEqual([next + 1, next + 2]);
  expect(again?.events.map(({ id, happening, at }) => ({ id, happening, at }))).toEqual(
    mine.map(({ id, happening, at }) => ({ id, happening, at })),
  );
  expect(again?.job.readings.at(-1)).toMatchObject({ value: 12, status: 'provisional' });
});

test('nothing is put on top of a job that was put on hold meanwhile', () => {
  const bay = called();
  const mine = [event(bay.state.seq + 1, { type: 'stepBegun', step: 'lamp' })];
  bay.does({ type: 'jobHeld', reason: why }, 'fred');
  expect(onTopOf(bay.state, mine)).toEqual({
    ok: false,
    error: 'The job is on hold: resume it first.',
  });
});
