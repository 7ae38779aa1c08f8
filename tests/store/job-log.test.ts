import { expect, test } from 'vitest';
import { bayView, jobLog, jobView } from '@/lib/store';
import { freshStore, opens } from './fresh-store';
import { event, held, jobId, opened, resumed, vehicle } from './small-shop';

test('a batch is stored in order and answered with its numbers', async () => {
  const { store, log } = await freshStore();
  const stored = await log.append(jobId(1), [opened(1), held(1, 2), resumed(1, 3)]);
  expect(stored).toEqual({ ok: true, value: { seqs: [1, 2, 3], seq: 3 } });
  const job = await jobView(store, jobId(1));
  expect(job?.events).toEqual([opened(1), held(1, 2), resumed(1, 3)]);
  expect(job?.revision.procedure).toBe('three-steps');
});

test('the lists follow the events: running, held, running', async () => {
  const { store, log } = await freshStore();
  await log.append(jobId(1), [opened(1)]);
  expect((await bayView(store, 'bay-1'))?.job).toMatchObject({ phase: 'running', seq: 1 });
  await log.append(jobId(1), [held(1, 2)]);
  expect((await bayView(store, 'bay-1'))?.job).toMatchObject({ phase: 'held', seq: 2 });
  await log.append(jobId(1), [resumed(1, 3)]);
  expect((await bayView(store, 'bay-1'))?.job).toMatchObject({ phase: 'running', seq: 3 });
});

test('a batch sent again is answered the same and stored once', async () => {
  const { store, log } = await freshStore();
  const batch = [opened(1), held(1, 2)];
  const first = await log.append(jobId(1), batch);
  const again = await log.append(jobId(1), batch);
  expect(again).toEqual(first);
  expect((await jobView(store, jobId(1)))?.events).toHaveLength(2);
});

test('a batch of which the first half is stored already goes on where that ended', async () => {
  const { log } = await freshStore();
  await log.append(jobId(1), [opened(1), held(1, 2)]);
  const more = await log.append(jobId(1), [held(1, 2), resumed(1, 3)]);
  expect(more).toEqual({ ok: true, value: { seqs: [2, 3], seq: 3 } });
});

test('an id with other content is refused', async () => {
  const { store, log } = await freshStore();
  await log.append(jobId(1), [opened(1), held(1, 2)]);
  const other = await log.append(jobId(1), [held(1, 2, 'a different reason')]);
  expect(other).toEqual({ ok: false, error: { kind: 'idReused', index: 0, expectedSeq: 3 } });
  expect((await jobView(store, jobId(1)))?.events[1]).toEqual(held(1, 2));
});

test('a gap is refused with the number that was expected, and nothing of the batch is stored', async () => {
  const { store, log } = await freshStore();
  await log.append(jobId(1), [opened(1)]);
  const gap = await log.append(jobId(1), [held(1, 2), resumed(1, 4)]);
  expect(gap).toMatchObject({
    ok: false,
    error: { kind: 'refused', refusal: { code: 'sequence' }, index: 1, expectedSeq: 2 },
  });
  expect((await jobView(store, jobId(1)))?.events).toEqual([opened(1)]);
});

test('events in the wrong order are refused as a whole', async () => {
  const { store, log } = await freshStore();
  await log.append(jobId(1), [opened(1)]);
  const swapped = await log.append(jobId(1), [resumed(1, 3), held(1, 2)]);
  expect(swapped).toMatchObject({ ok: false, error: { kind: 'refused', index: 0 } });
  expect((await jobView(store, jobId(1)))?.events).toHaveLength(1);
});

test('what the job does not allow is refused, and the events before it in the batch are not stored', async () => {
  const { store, log } = await freshStore();
  await log.append(jobId(1), [opened(1)]);
  const twice = await log.append(jobId(1), [held(1, 2), held(1, 3)]);
  expect(twice).toMatchObject({ ok: false, error: { kind: 'refused', index: 1 } });
  expect((await bayView(store, 'bay-1'))?.job).toMatchObject({ phase: 'running', seq: 1 });
});

test('after a refusal the job goes on as if nothing had been sent', async () => {
  const { log } = await freshStore();
  await log.append(jobId(1), [opened(1)]);
  await log.append(jobId(1), [held(1, 2), held(1, 3)]);
  expect(await log.append(jobId(1), [held(1, 2)])).toMatchObject({ ok: true });
});

test('two kiosks at one job: the second is told that another event stands there', async () => {
  const { log } = await freshStore();
  await log.append(jobId(1), [opened(1), held(1, 2)]);
  const other = { ...held(1, 2), id: '99999999-0000-4000-9000-000000000002' };
  const late = await log.append(jobId(1), [other]);
  expect(late).toEqual({ ok: false, error: { kind: 'conflict', index: 0, expectedSeq: 3 } });
});

test('batches sent at the same moment are stored one after the other', async () => {
  const { store, log } = await freshStore();
  await log.append(jobId(1), [opened(1)]);
  const rivals = [1, 2, 3].map((n) => ({
    ...held(1, 2),
    id: `99999999-0000-4000-9000-00000000000${n}`,
  }));
  const answers = await Promise.all(rivals.map((one) => log.append(jobId(1), [one])));
  expect(answers.map((answer) => answer.ok)).toEqual([true, false, false]);
  expect((await jobView(store, jobId(1)))?.events).toHaveLength(2);
});

test('a bay has one open job at a time', async () => {
  const { log } = await freshStore();
  await log.append(jobId(1), [opened(1)]);
  const second = await log.append(jobId(2), [opened(2)]);
  expect(second).toEqual({ ok: false, error: { kind: 'bayTaken', job: jobId(1) } });
  expect(await log.append(jobId(2), [opened(2, 'bay-2')])).toMatchObject({ ok: true });
});

test('unknown jobs, bays and revisions are refused by name', async () => {
  const { log } = await freshStore();
  expect(await log.append(jobId(1), [held(1, 2)])).toEqual({
    ok: false,
    error: { kind: 'unknownJob' },
  });
  expect(await log.append(jobId(1), [opened(1, 'bay-9')])).toEqual({
    ok: false,
    error: { kind: 'unknownBay' },
  });
  const procedure = 'three-steps';
  const unpublished = event(1, 1, {
    type: 'jobOpened',
    procedure,
    revision: 7,
    vehicle,
    bay: 'bay-1',
  });
  expect(await log.append(jobId(1), [unpublished])).toEqual({
    ok: false,
    error: { kind: 'unknownRevision' },
  });
});

test('an event of another job is refused', async () => {
  const { log } = await freshStore();
  await log.append(jobId(1), [opened(1)]);
  expect(await log.append(jobId(1), [held(2, 2)])).toEqual({
    ok: false,
    error: { kind: 'unknownJob' },
  });
});

test('an event id of another job is refused', async () => {
  const { log } = await freshStore();
  await log.append(jobId(1), [opened(1)]);
  const borrowed = { ...opened(2, 'bay-2'), id: opened(1).id };
  expect(await log.append(jobId(2), [borrowed])).toMatchObject({
    ok: false,
    error: { kind: 'idReused' },
  });
});

test('after a restart the job goes on from what is on disk', async () => {
  const { store, file, log } = await freshStore();
  await log.append(jobId(1), [opened(1), held(1, 2)]);
  await store.close();
  const again = await opens(file);
  const later = jobLog(again, () => new Date());
  expect(await later.append(jobId(1), [resumed(1, 3)])).toMatchObject({ ok: true });
  expect((await jobView(again, jobId(1)))?.events).toHaveLength(3);
  await again.close();
});

test('what another process wrote to the same file is taken into account', async () => {
  const { file, log } = await freshStore();
  await log.append(jobId(1), [opened(1)]);
  const other = await opens(file);
  await jobLog(other, () => new Date()).append(jobId(1), [held(1, 2)]);
  await other.close();
  expect(await log.append(jobId(1), [resumed(1, 3)])).toMatchObject({ ok: true });
});
