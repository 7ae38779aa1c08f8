import { join } from 'node:path';
import Libsql from 'libsql';
import { Kysely } from 'kysely';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { demoProcedures, demoShop } from '@/demo';
import { demoMonth } from '@/demo/month';
import { replay, type JobState } from '@/lib/job';
import { enoughForCapability, mostPoints, mostRows, type ReviewFilter } from '@/lib/review';
import { setUpShop, type Store } from '@/lib/store';
import { addClosedJobs } from '@/lib/store/closed-jobs';
import { LibsqlDialect } from '@/lib/store/dialect';
import { rebuildReview, reviewOf, type Review } from '@/lib/store/review';
import type { Tables } from '@/lib/store/tables';
import { opens } from './fresh-store';
import { noon } from './small-shop';

vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

const month = demoMonth({ seed: 'review', until: '2026-03-31', days: 30 });
const states: readonly JobState[] = month.map((job) => {
  const opening = job[0]?.happening;
  const sheet = demoProcedures.find(
    ({ procedure }) => opening?.type === 'jobOpened' && procedure === opening.procedure,
  );
  const state = sheet && replay(sheet, job);
  if (state?.ok !== true) throw new Error('a broken job');
  return state.value;
});
const deviations = states.flatMap((state) => state.deviations);

const folder = mkdtempSync(join(tmpdir(), 'baycall-review-'));
const file = join(folder, 'baycall.db');
const all: ReviewFilter = { from: '2026-03-01', to: '2026-03-31' };
const cover: ReviewFilter = { ...all, procedure: 'front-cover-reseal' };
const bolt: ReviewFilter = { ...cover, ask: 'cover-torque', fastener: 'cover-3' };
const shifts: ReviewFilter = { ...all, shift: 'early' };

let store: Store;
let review: Review;

const open = async (names: boolean): Promise<Review> => {
  const found = await reviewOf(store, { names, now: new Date('2026-03-31T12:00:00Z') });
  if (found === undefined) throw new Error('no shop');
  return found;
};

beforeAll(async () => {
  store = await opens(file);
  const shop = demoShop('2026-03-31');
  await setUpShop(store, { shop, pinHashes: {}, procedures: demoProcedures }, noon);
  await addClosedJobs(store, month, noon);
  await rebuildReview(store);
  review = await open(true);
});
afterAll(async () => {
  await store.close();
  rmSync(folder, { recursive: true, force: true });
});

describe('the review of a demo month', () => {
  test('counts what the jobs say', async () => {
    expect(await review.overview(all)).toEqual({
      jobs: states.length,
      deviations: deviations.length,
      undecided: deviations.filter(({ decision }) => decision === undefined).length,
      outOfSpec: deviations.filter(({ kind }) => kind === 'outOfSpec').length,
      reworks: deviations.filter(({ kind }) => kind === 'rework').length,
      holds: month.flat().filter(({ happening }) => happening.type === 'jobHeld').length,
      readings: expect.any(Number) as number,
      complete: true,
    });
  });

  test('lists deviations with their context, the newest first', async () => {
    const { total, rows } = await review.deviations(all);
    expect(total).toBe(deviations.length);
    expect(rows).toHaveLength(Math.min(mostRows, total));
    const times = rows.map(({ at }) => at);
    expect(times).toEqual([...times].sort().reverse());
    const out = rows.find(({ kind }) => kind === 'outOfSpec');
    expect(out?.measured?.verdict).toBe('outOfSpec');
    expect(out?.instruction).not.toBe('');
    expect(out?.stepNumber).toBeGreaterThan(0);
    const said = rows.find(({ kind }) => kind === 'anotherWay');
    expect(said?.why?.transcript?.words.length).toBeGreaterThan(3);
    expect(said?.decision?.by.label).toBe('Mara Quill');
  });

  test('sorts them by kind and by step, each to a hundred per cent', async () => {
    const { total, byKind, byStep } = await review.pareto(all);
    expect(total).toBe(deviations.length);
    for (const bars of [byKind, byStep]) {
      expect(bars.reduce((sum, { count }) => sum + count, 0)).toBe(total);
      expect(bars.at(-1)?.cumulative).toBeCloseTo(1);
    }
  });

  test('follows what was done again', async () => {
    const { total, bySteps, chains } = await review.reworks(all);
    expect(total).toBe(deviations.filter(({ kind }) => kind === 'rework').length);
    expect(bySteps.reduce((sum, { times }) => sum + times, 0)).toBe(total);
    // All jobs of the month are closed, so nothing is open any more.
    expect(chains.flatMap(({ links }) => links).map(({ followed }) => followed)).not.toContain(
      'stillOpen',
    );
    expect(chains.some(({ links }) => links.some(({ sentBack }) => sentBack !== undefined))).toBe(
      true,
    );
  });

  test('charts a joint by its counted readings in the order of time', async () => {
    const section = await review.joint(bolt);
    const counted = states
      .flatMap(({ readings }) => readings)
      .filter((one) => one.ask === 'cover-torque' && one.fastener === 'cover-3')
      .filter(({ status }) => status === 'counted');
    expect(section?.points.length).toBeGreaterThanOrEqual(Math.min(mostPoints, counted.length));
    expect(section?.unit).toBe('N.m');
    expect(section?.chart?.points).toBe(section?.points.length);
    const times = section?.points.map(({ at }) => at) ?? [];
    expect(times).toEqual([...times].sort());
    expect(section?.points[1]?.movingRange).toBeCloseTo(
      Math.abs((section?.points[1]?.value ?? 0) - (section?.points[0]?.value ?? 0)),
    );
  });

  test('has at least one joint with enough for a capability, and one with a special cause', async () => {
    const { procedures } = await review.choices();
    const kinds = new Set<string>();
    for (const { procedure, joints } of procedures)
      for (const { ask, fastener } of joints) {
        const joint = await review.joint({
          ...all,
          procedure,
          ask,
          ...(fastener === undefined ? {} : { fastener }),
        });
        if (joint !== undefined) kinds.add(joint.capability.kind);
        if (joint?.capability.kind === 'capable')
          expect(joint.capability.points).toBeGreaterThanOrEqual(enoughForCapability);
      }
    expect(kinds).toContain('unstable');
    expect(kinds).toContain('capable');
  });

  test('times every step of a procedure against its book time', async () => {
    const times = await review.stepTimes(cover);
    expect(times?.steps).toHaveLength(
      demoProcedures.find(({ procedure }) => procedure === 'front-cover-reseal')?.steps.length ?? 0,
    );
    for (const { runs, histogram, quantiles } of times?.steps ?? []) {
      expect(histogram.reduce((sum, count) => sum + count, 0)).toBe(runs);
      expect((quantiles?.p10 ?? 0) <= (quantiles?.p90 ?? 0)).toBe(true);
    }
  });

  test('counts how phrases were heard, false and repeated ones among them', async () => {
    const { phrases, heard } = await review.hearings(all);
    expect(heard).toBeGreaterThan(1000);
    const sum = (count: (one: (typeof phrases)[number]) => number): number =>
      phrases.reduce((all_, one) => all_ + count(one), 0);
    expect(sum(({ askedBack }) => askedBack)).toBeGreaterThan(10);
    expect(sum(({ declined }) => declined)).toBeGreaterThan(5);
    expect(sum(({ takenBack }) => takenBack)).toBeGreaterThan(5);
    expect(sum(({ saidAgain }) => saidAgain)).toBeGreaterThan(10);
    expect(phrases.map(({ phrase }) => phrase)).toContain('torqued {value}');
  });

  test('tells why jobs stood still and for how long', async () => {
    const { total, byReason, rows } = await review.holds(all);
    expect(byReason.reduce((sum, { count }) => sum + count, 0)).toBe(total);
    expect(byReason.map(({ reason }) => reason)).toContain('Waiting for parts');
    expect(rows.every(({ minutes }) => (minutes ?? -1) >= 0)).toBe(true);
  });
});

describe('a filter', () => {
  test.each<readonly [string, Partial<ReviewFilter>]>([
    ['bay', { bay: 'bay-1' }],
    ['procedure', { procedure: 'front-cover-reseal' }],
    ['role', { role: 'mechanic' }],
    ['day', { from: '2026-03-10', to: '2026-03-12' }],
    ['shift', { shift: 'early' }],
  ])('by %s leaves what it names and nothing else', async (_, narrower) => {
    const { rows, total } = await review.deviations({ ...all, ...narrower });
    expect(total).toBeGreaterThan(0);
    expect(total).toBeLessThanOrEqual(deviations.length);
    for (const row of rows) {
      if (narrower.bay !== undefined) expect(row.bay.id).toBe(narrower.bay);
      if (narrower.procedure !== undefined) expect(row.procedure).toBe(narrower.procedure);
      if (narrower.role !== undefined) expect(row.by.role).toBe(narrower.role);
      if (narrower.from !== undefined) expect(row.at.slice(0, 10) >= narrower.from).toBe(true);
      if (narrower.to !== undefined) expect(row.at.slice(0, 10) <= narrower.to).toBe(true);
      if (narrower.shift === 'early')
        expect(row.at.slice(11, 16) >= '06:00' && row.at.slice(11, 16) < '14:00').toBe(true);
    }
  });

  test('by shift splits every count between the shifts of the day', async () => {
    const total = async (shift: string): Promise<number> =>
      (await review.deviations({ ...all, shift })).total;
    const sum = (await total('early')) + (await total('late')) + (await total('night'));
    expect(sum).toBe(deviations.length);
  });

  test('by a shift that the shop does not have finds nothing', async () => {
    expect((await review.deviations({ ...all, shift: 'weekend' })).total).toBe(0);
  });
});

describe('without a foreman', () => {
  test('no name of a person is in any section', async () => {
    const secret = await open(false);
    const everything = JSON.stringify([
      await secret.choices(),
      await secret.overview(all),
      await secret.deviations(all),
      await secret.pareto(all),
      await secret.reworks(all),
      await secret.joint(bolt),
      await secret.stepTimes(cover),
      await secret.hearings(all),
      await secret.holds(all),
      await secret.marks(),
    ]);
    for (const { id, name } of demoShop('2026-03-31').people) {
      expect(everything).not.toContain(name);
      expect(everything).not.toContain(`"${id}"`);
    }
    expect(everything).toContain('Mechanic 1');
    expect(everything).toContain('Foreman 1');
  });

  test('with one, they are', async () => {
    const { rows } = await review.deviations(all);
    expect(new Set(rows.map(({ by }) => by.label))).toContain('Tom Ashby');
  });
});

/** Every statement that a query runs, as the database plans it. */
const plansOf = async (
  ask: (review: Review) => Promise<unknown>,
): Promise<readonly { readonly sql: string; readonly plan: readonly string[] }[]> => {
  const database = new Libsql(file);
  const ran: { readonly sql: string; readonly parameters: readonly unknown[] }[] = [];
  const db = new Kysely<Tables>({
    dialect: new LibsqlDialect({ database }),
    log: ({ query }) => {
      ran.push({ sql: query.sql, parameters: query.parameters });
    },
  });
  try {
    const logged = await reviewOf({ ...store, db }, { names: true, now: noon });
    if (logged === undefined) throw new Error('no shop');
    ran.length = 0;
    await ask(logged);
    return ran.map(({ sql, parameters }) => ({
      sql,
      plan: database
        .prepare(`explain query plan ${sql}`)
        .all(...parameters)
        .map((row) => String((row as { readonly detail: unknown }).detail)),
    }));
  } finally {
    database.close();
  }
};

/** All but those of a few rows. */
const big = /\b(row|review_(?!state)\w+|job_events|job_links|jobs)\b/;

describe('each query finds its rows by an index, with and without a shift', () => {
  const queries: readonly (readonly [
    string,
    (review: Review, filter: ReviewFilter) => Promise<unknown>,
    string,
  ])[] = [
    ['overview', (r, f) => r.overview(f), 'review_readings_at'],
    ['deviations', (r, f) => r.deviations(f), 'review_deviations_at'],
    ['pareto', (r, f) => r.pareto(f), 'review_deviations_at'],
    ['reworks', (r, f) => r.reworks(f), 'review_reworks_at'],
    ['joint', (r, f) => r.joint({ ...bolt, ...f }), 'review_readings_joint'],
    ['step times', (r, f) => r.stepTimes({ ...cover, ...f }), 'PRIMARY KEY'],
    ['hearings', (r, f) => r.hearings(f), 'PRIMARY KEY'],
    ['holds', (r, f) => r.holds(f), 'review_holds_at'],
  ];
  describe.each(queries)('%s', (_, ask, index) => {
    test.each([
      ['all', all],
      ['a shift', shifts],
      ['a bay', { ...all, bay: 'bay-1' }],
    ])('%s', async (_, filter) => {
      const plans = await plansOf((r) => ask(r, filter));
      expect(plans.flatMap(({ plan }) => plan).join('\n')).toContain(index);
      for (const { sql, plan } of plans)
        for (const line of plan)
          if (line.startsWith('SCAN') && big.test(line))
            expect(`${line} in ${sql}`).toBe('no scan of a big table');
    });
  });
});
