import { join } from 'node:path';
import { expect, test } from 'vitest';
import { demoProcedures, demoShop } from '@/demo';
import { demoMonth } from '@/demo/month';
import type { JobEvent } from '@/lib/job';
import { setUpShop } from '@/lib/store';
import { addClosedJobs } from '@/lib/store/closed-jobs';
import { toolCycles } from '@/lib/store/tool-cycles';
import { opens, testFolder } from './fresh-store';
import { noon } from './small-shop';

const shop = demoShop('2026-03-01T08:00:00+00:00');
const jobs = demoMonth({ seed: '1', until: '2026-03-31', days: 6 });

const filled = async () => {
  const store = await opens(join(testFolder(), 'baycall.db'));
  await setUpShop(store, { shop, pinHashes: {}, procedures: demoProcedures }, noon);
  return store;
};

/** Counted by hand from the sheets: a reading without a fastener stands for all that its pass tightens. */
const byHand = (records: readonly (readonly JobEvent[])[], tool: string, since: string): number => {
  let cycles = 0;
  for (const events of records) {
    const opening = events[0]?.happening;
    const sheet = demoProcedures.find(
      (one) => opening?.type === 'jobOpened' && one.procedure === opening.procedure,
    );
    for (const { happening, at } of events) {
      if (happening.type !== 'readingTaken' || happening.tool?.id !== tool) continue;
      if (at.slice(0, 10) < since) continue;
      const asks = sheet?.steps.find(({ id }) => id === happening.step)?.asks ?? [];
      const ask = asks.find(({ id }) => id === happening.ask);
      const of = ask?.kind === 'value' ? ask.of : undefined;
      const group =
        of?.kind === 'pass' ? sheet?.groups.find(({ id }) => id === of.group) : undefined;
      cycles += happening.fastener === undefined ? (group?.fasteners.length ?? 1) : 1;
    }
  }
  return cycles;
};

const handCounts = (records: readonly (readonly JobEvent[])[]) =>
  Object.fromEntries(
    shop.torqueTools.map(({ id, calibration }) => [id, byHand(records, id, calibration.on)]),
  );

test('the cycles of each tool are those that the readings record, and go on with what is stored', async () => {
  const store = await filled();
  const none = await toolCycles(store.db, shop.torqueTools);
  expect(Object.values(none).every((cycles) => cycles === 0)).toBe(true);
  for (const upTo of [3, jobs.length]) {
    expect((await addClosedJobs(store, jobs.slice(0, upTo), noon)).ok).toBe(true);
    expect(await toolCycles(store.db, shop.torqueTools)).toEqual(handCounts(jobs.slice(0, upTo)));
  }
  expect(Math.max(...Object.values(handCounts(jobs)))).toBeGreaterThan(0);
});

test('many who ask at once get the same count, and each database has its own', async () => {
  const [one, other] = [await filled(), await filled()];
  await addClosedJobs(one, jobs.slice(0, 4), noon);
  const asked = await Promise.all([1, 2, 3].map(() => toolCycles(one.db, shop.torqueTools)));
  expect(asked).toEqual([1, 2, 3].map(() => handCounts(jobs.slice(0, 4))));
  expect(Object.values(await toolCycles(other.db, shop.torqueTools)).every((n) => n === 0)).toBe(
    true,
  );
});

test('a calibration of today starts the count again', async () => {
  const store = await filled();
  await addClosedJobs(store, jobs, noon);
  await toolCycles(store.db, shop.torqueTools);
  const calibrated = shop.torqueTools.map((tool) => ({
    ...tool,
    calibration: { ...tool.calibration, on: '2099-01-01' },
  }));
  expect(Object.values(await toolCycles(store.db, calibrated)).every((n) => n === 0)).toBe(true);
});
