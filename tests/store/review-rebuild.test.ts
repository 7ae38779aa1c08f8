import { join } from 'node:path';
import fc from 'fast-check';
import { expect, onTestFinished, test, vi } from 'vitest';
import { demoProcedures, demoShop } from '@/demo';
import { demoMonth } from '@/demo/month';
import type { JobEvent } from '@/lib/job';
import { jobLog, setUpShop, type Store } from '@/lib/store';
import { addClosedJobs } from '@/lib/store/closed-jobs';
import { rebuildReview } from '@/lib/store/review';
import { lidJob } from '../job/lid-procedure';
import { throwsOfDice, walk } from '../job/walk';
import { opens, testFolder } from './fresh-store';
import { reviewRows } from './review-rows';
import { noon, smallShop } from './small-shop';

vi.setConfig({ testTimeout: 120_000 });

const emptied = async (store: Store): Promise<void> => {
  await store.db.updateTable('review_state').set({ version: -1 }).execute();
};

const lidShop = async (): Promise<Store> => {
  const store = await opens(join(testFolder(), 'baycall.db'));
  await setUpShop(store, { shop: smallShop, pinHashes: {}, procedures: [lidJob] }, noon);
  return store;
};

test('whatever happens and however it is batched, what is written as it comes is what is made from the events', async () => {
  await fc.assert(
    fc.asyncProperty(throwsOfDice(60), fc.integer({ min: 1, max: 20 }), async (dice, batch) => {
      const store = await lidShop();
      const log = jobLog(store, () => noon);
      const { log: events } = walk(lidJob, dice);
      for (let at = 0; at < events.length; at += batch) {
        const some = events.slice(at, at + batch);
        expect((await log.append(events[0]?.job ?? '', some)).ok).toBe(true);
      }
      await rebuildReview(store);
      const asItCame = await reviewRows(store);
      await emptied(store);
      expect(await rebuildReview(store)).toEqual({ jobs: 1, faults: [] });
      expect(await reviewRows(store)).toEqual(asItCame);
      await store.close();
    }),
    { numRuns: 8 },
  );
});

const demoStore = async (): Promise<Store> => {
  const store = await opens(join(testFolder(), 'baycall.db'));
  onTestFinished(() => store.close());
  const shop = demoShop('2026-03-31');
  await setUpShop(store, { shop, pinHashes: {}, procedures: demoProcedures }, noon);
  return store;
};

const days = demoMonth({ seed: 'review', until: '2026-03-31', days: 5 });

test('closed jobs that are added as a whole are in the review, the same as when it is made anew', async () => {
  const store = await demoStore();
  await addClosedJobs(store, days, noon);
  await rebuildReview(store);
  const added = await reviewRows(store);
  expect(added.jobs).toHaveLength(days.length);
  await emptied(store);
  await rebuildReview(store);
  expect(await reviewRows(store)).toEqual(added);
});

test('a rebuild that is broken off goes on where it was', async () => {
  const store = await demoStore();
  await addClosedJobs(store, days, noon);
  const whole = await reviewRows(store);
  await emptied(store);
  let pauses = 0;
  const cut = rebuildReview(store, () => {
    pauses += 1;
    return pauses === 2 ? Promise.reject(new Error('the power is cut')) : Promise.resolve();
  });
  await expect(cut).rejects.toThrow('the power is cut');
  const some = await store.db.selectFrom('review_jobs').select('job').execute();
  expect(some.length).toBeGreaterThan(0);
  expect(some.length).toBeLessThan(days.length);
  await rebuildReview(store);
  expect(await reviewRows(store)).toEqual(whole);
});

test('a job that goes on while it is not taken in yet is taken in as a whole later', async () => {
  const store = await lidShop();
  onTestFinished(() => store.close());
  const log = jobLog(store, () => noon);
  const dice = fc.sample(throwsOfDice(60), { numRuns: 1, seed: 7 })[0] ?? [];
  const events: readonly JobEvent[] = walk(lidJob, dice).log;
  const job = events[0]?.job ?? '';
  await log.append(job, events);
  await rebuildReview(store);
  const whole = await reviewRows(store);

  const other = await lidShop();
  onTestFinished(() => other.close());
  const otherLog = jobLog(other, () => noon);
  await otherLog.append(job, events.slice(0, 3));
  await rebuildReview(other);
  await other.db.deleteFrom('review_jobs').execute();
  for (const table of ['review_hearings', 'review_deviations', 'review_readings'] as const)
    await other.db.deleteFrom(table).execute();
  await otherLog.append(job, events.slice(3));
  expect((await reviewRows(other)).jobs).toEqual([]);
  await emptied(other);
  await rebuildReview(other);
  expect(await reviewRows(other)).toEqual(whole);
});

test('a job whose record is broken keeps no other out', async () => {
  const store = await demoStore();
  await addClosedJobs(store, days, noon);
  const [victim] = await store.db.selectFrom('jobs').select('id').limit(1).execute();
  await store.db
    .updateTable('jobs')
    .set({ revision: 1, procedure: demoProcedures[0]?.procedure ?? '' })
    .where('id', '=', victim?.id ?? '')
    .execute();
  await emptied(store);
  const rebuilt = await rebuildReview(store);
  expect(rebuilt.jobs + rebuilt.faults.length).toBe(days.length);
  expect(rebuilt.faults.length).toBeLessThanOrEqual(1);
});
