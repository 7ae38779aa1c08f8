import { expect, test } from 'vitest';
import { jobView } from '@/lib/store';
import { addClosedJobs } from '@/lib/store/closed-jobs';
import { freshStore } from './fresh-store';
import { event, jobId, noon, opened } from './small-shop';

/** Ada does all three steps and closes. */
const whole = (n: number) => [
  opened(n),
  ...['one', 'two', 'three'].flatMap((step, index) => [
    event(n, 2 + 2 * index, { type: 'stepBegun', step }),
    event(n, 3 + 2 * index, { type: 'stepDone', step }),
  ]),
  event(n, 8, { type: 'jobClosed' }),
];

test('closed jobs are added beside the one that is open in the same bay', async () => {
  const { store, log } = await freshStore();
  expect((await log.append(jobId(1), [opened(1)])).ok).toBe(true);
  const added = await addClosedJobs(store, [whole(2), whole(3)], noon);
  expect(added).toEqual({ ok: true, value: { added: 2, there: 0 } });
  const record = await jobView(store, jobId(2));
  expect(record?.events).toEqual(whole(2));
  expect(record?.summary).toMatchObject({ phase: 'closed', seq: 8 });
});

test('adding them again changes nothing', async () => {
  const { store } = await freshStore();
  await addClosedJobs(store, [whole(2)], noon);
  expect(await addClosedJobs(store, [whole(2)], noon)).toEqual({
    ok: true,
    value: { added: 0, there: 1 },
  });
});

test('a record that the rules refuse, or that is not closed, is not added', async () => {
  const { store } = await freshStore();
  const broken = whole(2).filter(({ seq }) => seq !== 4);
  expect(await addClosedJobs(store, [broken], noon)).toMatchObject({ ok: false });
  expect(await addClosedJobs(store, [whole(2).slice(0, 5)], noon)).toEqual({
    ok: false,
    error: 'Only closed jobs can be added as a whole.',
  });
  expect(await jobView(store, jobId(2))).toBeUndefined();
});
