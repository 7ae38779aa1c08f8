import { expect, test } from 'vitest';
import { EventQueue, type Delivery } from '@/components/kiosk/event-queue';
import { onTopOf } from '@/components/kiosk/on-top-of';
import type { JobEvent } from '@/lib/job';
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
  const again = onTopOf(bay.state, mine);
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
  expect(onTopOf(bay.state, mine)).toBeUndefined();
});

test('nothing comes of nothing', () => {
  expect(onTopOf(called().state, [])).toBeUndefined();
});

const queueThat = async (delivery: Delivery, events: readonly JobEvent[]) => {
  const refused: (readonly JobEvent[])[] = [];
  const queue = new EventQueue({
    deliver: () => Promise.resolve(delivery),
    wait: () => Promise.resolve(),
    onChange: () => undefined,
    onSignOnNeeded: () => undefined,
    onRefused: (_, overtaken) => refused.push(overtaken),
  });
  queue.push(events);
  await new Promise((resolve) => setTimeout(resolve));
  return { refused, pending: queue.pending };
};

test('the queue gives back what was overtaken, and drops what was refused for itself', async () => {
  const mine = [event(5, { type: 'foremanCalled' }), event(6, { type: 'foremanCalled' })];
  const overtaken = await queueThat({ kind: 'refused', message: 'no', overtaken: true }, mine);
  expect(overtaken).toEqual({ refused: [mine], pending: 0 });
  const refused = await queueThat({ kind: 'refused', message: 'no' }, mine);
  expect(refused).toEqual({ refused: [[]], pending: 0 });
});
