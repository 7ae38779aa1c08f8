import { expect, test } from 'vitest';
import type { JobEvent, JobState } from '@/lib/job';
import { bayView, jobLog } from '@/lib/store';
import { freshStore } from './fresh-store';
import { event, jobId, noon, opened, held } from './small-shop';

const moved = (n: number, seq: number, bay: string): JobEvent => ({
  ...event(n, seq, { type: 'jobReassigned', bay, reason: { text: 'lift broken' } }),
  actor: 'finn',
  role: 'foreman',
});

test('a job that was moved is open in its new bay, and the old one is free', async () => {
  const { store, log } = await freshStore();
  await log.append(jobId(1), [opened(1)]);
  expect(await log.append(jobId(1), [moved(1, 2, 'bay-2')])).toMatchObject({ ok: true });
  expect((await bayView(store, 'bay-2'))?.job?.id).toBe(jobId(1));
  expect((await bayView(store, 'bay-1'))?.job).toBeUndefined();
  expect(await log.append(jobId(2), [opened(2, 'bay-1')])).toMatchObject({ ok: true });
});

test('a job is not moved onto another, nor into a bay that the shop has not', async () => {
  const { store, log } = await freshStore();
  await log.append(jobId(1), [opened(1)]);
  await log.append(jobId(2), [opened(2, 'bay-2')]);
  expect(await log.append(jobId(1), [moved(1, 2, 'bay-2')])).toEqual({
    ok: false,
    error: { kind: 'bayTaken', job: jobId(2) },
  });
  expect(await log.append(jobId(1), [moved(1, 2, 'bay-9')])).toEqual({
    ok: false,
    error: { kind: 'unknownBay' },
  });
  expect((await bayView(store, 'bay-1'))?.job?.seq).toBe(1);
});

test('who listens is told the state of a job once it is stored, and not when it is refused', async () => {
  const { store } = await freshStore();
  const told: JobState[] = [];
  const log = jobLog(
    store,
    () => noon,
    (state) => told.push(state),
  );
  await log.append(jobId(1), [opened(1), held(1, 2)]);
  await log.append(jobId(1), [held(1, 3)]);
  expect(told.map(({ seq, phase }) => ({ seq, phase }))).toEqual([{ seq: 2, phase: 'held' }]);
});
