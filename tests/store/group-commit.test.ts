import { sql } from 'kysely';
import { expect, test } from 'vitest';
import { jobLog, jobView, verifyAll } from '@/lib/store';
import { freshStore } from './fresh-store';
import { event, held, jobId, noon, opened, resumed } from './small-shop';

test('kiosks that write at the same moment are stored together, each with its own answer', async () => {
  const { store, log } = await freshStore();
  const answers = await Promise.all([
    log.append(jobId(1), [opened(1)]),
    log.append(jobId(2), [opened(2, 'bay-2')]),
    log.append(jobId(1), [held(1, 2), resumed(1, 3)]),
    log.append(jobId(2), [held(2, 2)]),
  ]);
  expect(answers).toEqual([
    { ok: true, value: { seqs: [1], seq: 1 } },
    { ok: true, value: { seqs: [1], seq: 1 } },
    { ok: true, value: { seqs: [2, 3], seq: 3 } },
    { ok: true, value: { seqs: [2], seq: 2 } },
  ]);
  expect(await verifyAll(store.db)).toMatchObject({ jobs: 2, events: 5, breaks: [] });
});

test('one that is refused does not touch those that are stored with it', async () => {
  const { store, log } = await freshStore();
  await log.append(jobId(1), [opened(1)]);
  const [first, refused, taken, last] = await Promise.all([
    log.append(jobId(1), [held(1, 2)]),
    log.append(jobId(1), [held(1, 3)]),
    log.append(jobId(2), [opened(2, 'bay-1')]),
    log.append(jobId(1), [resumed(1, 3)]),
  ]);
  expect(first.ok).toBe(true);
  expect(refused).toMatchObject({ ok: false, error: { kind: 'refused', index: 0 } });
  expect(taken).toEqual({ ok: false, error: { kind: 'bayTaken', job: jobId(1) } });
  expect(last.ok).toBe(true);
  expect((await jobView(store, jobId(1)))?.events).toEqual([opened(1), held(1, 2), resumed(1, 3)]);
});

test('a bay that is taken in the same group is taken', async () => {
  const { log } = await freshStore();
  const [, one, other] = await Promise.all([
    log.append(jobId(3), [held(3, 1)]),
    log.append(jobId(1), [opened(1)]),
    log.append(jobId(2), [opened(2)]),
  ]);
  expect(one.ok).toBe(true);
  expect(other).toEqual({ ok: false, error: { kind: 'bayTaken', job: jobId(1) } });
});

test('the same batch twice at the same moment is stored once and answered twice', async () => {
  const { store, log } = await freshStore();
  await log.append(jobId(1), [opened(1)]);
  const [, one, again] = await Promise.all([
    log.append(jobId(1), [held(1, 2)]),
    log.append(jobId(1), [resumed(1, 3)]),
    log.append(jobId(1), [resumed(1, 3)]),
  ]);
  expect(again).toEqual(one);
  expect((await jobView(store, jobId(1)))?.events).toHaveLength(3);
});

test('where the database itself fails at one, only that one fails', async () => {
  const { store, log } = await freshStore();
  await log.append(jobId(1), [opened(1)]);
  await log.append(jobId(2), [opened(2, 'bay-2')]);
  await sql`create trigger no_such before insert on job_events when new.job = ${sql.lit(jobId(2))}
    begin select raise(abort, 'out of order'); end`.execute(store.db);
  const [, good, bad, more] = await Promise.allSettled([
    log.append(jobId(1), [held(1, 2)]),
    log.append(jobId(1), [resumed(1, 3)]),
    log.append(jobId(2), [held(2, 2)]),
    log.append(jobId(1), [held(1, 4)]),
  ]);
  expect(good).toMatchObject({ status: 'fulfilled', value: { ok: true } });
  expect(bad).toMatchObject({ status: 'rejected' });
  expect(more).toMatchObject({ status: 'fulfilled', value: { ok: true } });
  await sql`drop trigger no_such`.execute(store.db);
  expect(await log.append(jobId(2), [held(2, 2)])).toMatchObject({ ok: true });
  expect(await verifyAll(store.db)).toMatchObject({ events: 6, breaks: [] });
});

test('who listens is told each state once it is stored, in order, and nothing of what was refused', async () => {
  const { store } = await freshStore();
  const told: string[] = [];
  const log = jobLog(
    store,
    () => noon,
    ({ job, seq, phase }) => told.push(`${job.slice(-1)} ${seq} ${phase}`),
  );
  await log.append(jobId(1), [opened(1)]);
  await Promise.all([
    log.append(jobId(1), [held(1, 2)]),
    log.append(jobId(1), [resumed(1, 3)]),
    log.append(jobId(1), [event(1, 9, { type: 'jobResumed' })]),
    log.append(jobId(1), [held(1, 2)]),
  ]);
  expect(told).toEqual(['1 1 running', '1 2 held', '1 3 running']);
});
