import { statSync } from 'node:fs';
import { join } from 'node:path';
import Libsql from 'libsql';
import { Kysely } from 'kysely';
import { z } from 'zod';
import { demoProcedures } from '../../demo';
import type { Person } from '../people';
import type { ReviewFilter } from '../review';
import { rebuildReview, reviewOf, type Review } from '../store/review';
import { LibsqlDialect } from '../store/dialect';
import { jobLog, type Store } from '../store';
import { reviewTables } from '../store/review/tables';
import type { Tables } from '../store/tables';
import { onProjectDisk, openedStore } from './bench-appends';
import { newBenchJob } from './bench-review-job';
import { fillReviewShop, type ReviewShop } from './bench-review-shop';
import { nextEvent } from './bench-wall-shop';

export interface QueryMeasures {
  readonly name: string;
  readonly tookMs: readonly number[];
  /** The lines of its plans that read a table of the review, each once. */
  readonly plan: readonly string[];
}

/** What the review costs over a large record. */
export interface ReviewMeasures {
  readonly shop: ReviewShop;
  readonly fileMb: number;
  readonly rows: Readonly<Record<string, number>>;
  readonly queries: readonly QueryMeasures[];
  /** Making the review anew from the events, over the first jobs: as after an update. */
  readonly rebuild: { readonly jobs: number; readonly events: number; readonly tookS: number };
  /** Storing one event that means nothing for the review, and the same one spoken, which is counted as heard. */
  readonly appends: { readonly touchedMs: readonly number[]; readonly spokenMs: readonly number[] };
}

const usualEvents = 2_000_000;
const until = '2026-03-31';
const rounds = 20;
const rebuiltJobs = 200;

const detailRow = z.object({ detail: z.string() });

type Ask = (review: Review) => Promise<unknown>;

const asks = (all: ReviewFilter, month: ReviewFilter): readonly (readonly [string, Ask])[] => {
  const cover = { procedure: 'front-cover-reseal' };
  const bolt = { ...cover, ask: 'cover-torque', fastener: 'cover-3' };
  const shift = { shift: 'early' };
  const bay = { bay: 'bay-7' };
  return [
    ['overview, all', (r) => r.overview(all)],
    ['overview, last month', (r) => r.overview(month)],
    ['overview, one bay, all', (r) => r.overview({ ...all, ...bay })],
    ['deviations, all', (r) => r.deviations(all)],
    ['deviations, one shift, all', (r) => r.deviations({ ...all, ...shift })],
    ['deviations, one joint, all', (r) => r.deviations({ ...all, ...bolt })],
    ['Pareto, all', (r) => r.pareto(all)],
    ['Pareto, one shift, all', (r) => r.pareto({ ...all, ...shift })],
    ['rework, all', (r) => r.reworks(all)],
    ['joint, all', (r) => r.joint({ ...all, ...bolt })],
    ['joint, one shift, all', (r) => r.joint({ ...all, ...bolt, ...shift })],
    ['joint, one bay, all', (r) => r.joint({ ...all, ...bolt, ...bay })],
    ['step times, all', (r) => r.stepTimes({ ...all, ...cover })],
    ['step times, one shift, all', (r) => r.stepTimes({ ...all, ...cover, ...shift })],
    ['step times, one bay, all', (r) => r.stepTimes({ ...all, ...cover, ...bay })],
    ['hearings, all', (r) => r.hearings(all)],
    ['hearings, last month', (r) => r.hearings(month)],
    ['hearings, one shift, all', (r) => r.hearings({ ...all, ...shift })],
    ['holds, all', (r) => r.holds(all)],
    ['holds, one shift, all', (r) => r.holds({ ...all, ...shift })],
  ];
};

const countRows = async ({ db }: Store): Promise<Readonly<Record<string, number>>> => {
  const counts: Record<string, number> = {};
  for (const table of ['job_events', ...reviewTables] as const) {
    const row = await db
      .selectFrom(table)
      .select((from) => from.fn.countAll<number>().as('count'))
      .executeTakeFirst();
    counts[table] = row?.count ?? 0;
  }
  return counts;
};

const opened = async (store: Store): Promise<Review> => {
  const review = await reviewOf(store, { names: true, now: new Date(`${until}T00:00:00Z`) });
  if (review === undefined) throw new Error('there is no shop');
  return review;
};

/** The plan of every statement that a query runs, by the database itself. */
const planOf = async (file: string, ask: Ask): Promise<readonly string[]> => {
  const database = new Libsql(file);
  const lines = new Set<string>();
  const ran: { readonly sql: string; readonly parameters: readonly unknown[] }[] = [];
  const db = new Kysely<Tables>({
    dialect: new LibsqlDialect({ database }),
    log: ({ query }) => {
      ran.push({ sql: query.sql, parameters: query.parameters });
    },
  });
  await ask(await opened({ db, pragmas: {}, close: () => db.destroy() }));
  for (const { sql, parameters } of ran)
    if (/\breview_/.test(sql))
      for (const row of database.prepare(`explain query plan ${sql}`).all(...parameters)) {
        const { detail } = detailRow.parse(row);
        if (/\b(row|review_\w+)\b/.test(detail)) lines.add(detail);
      }
  database.close();
  return [...lines];
};

const measureQuery = async (
  file: string,
  review: Review,
  [name, ask]: readonly [string, Ask],
): Promise<QueryMeasures> => {
  const tookMs: number[] = [];
  for (let round = 0; round < rounds; round += 1) {
    const began = performance.now();
    await ask(review);
    tookMs.push(performance.now() - began);
  }
  return { name, tookMs, plan: await planOf(file, ask) };
};

/** Takes some jobs out of the review and in again, from their events. They come back as they were, or this throws. */
const measureRebuild = async (store: Store): Promise<ReviewMeasures['rebuild']> => {
  const jobs = await store.db
    .selectFrom('jobs')
    .select(['id', 'seq'])
    .orderBy('id')
    .limit(rebuiltJobs)
    .execute();
  const ids = jobs.map(({ id }) => id);
  const readings = () =>
    store.db
      .selectFrom('review_readings')
      .selectAll()
      .where('job', 'in', ids)
      .orderBy('job')
      .orderBy('seq')
      .execute();
  const before = JSON.stringify(await readings());
  for (const table of ['review_readings', 'review_steps', 'review_deviations'] as const)
    await store.db.deleteFrom(table).where('job', 'in', ids).execute();
  for (const table of ['review_reworks', 'review_holds', 'review_jobs'] as const)
    await store.db.deleteFrom(table).where('job', 'in', ids).execute();
  const began = performance.now();
  const rebuilt = await rebuildReview(store);
  const tookS = (performance.now() - began) / 1000;
  if (rebuilt.jobs !== jobs.length || JSON.stringify(await readings()) !== before)
    throw new Error('what was made anew is not what was there');
  return { jobs: jobs.length, events: jobs.reduce((sum, { seq }) => sum + seq, 0), tookS };
};

const appendRounds = 300;

/** Goes to and fro between two steps, in turns by touch and by voice. */
const measureAppends = async (store: Store): Promise<ReviewMeasures['appends']> => {
  const [first, second] = demoProcedures[0]?.steps ?? [];
  if (first === undefined || second === undefined) throw new Error('a procedure has two steps');
  const person: Person = { id: 'tom-ashby', name: 'Tom Ashby', role: 'mechanic' };
  const startMs = Date.parse(`${until}T06:00:00Z`);
  const job = newBenchJob('bay-1', person, startMs);
  const log = jobLog(store, () => new Date(startMs));
  const opened = await log.append(job.state.job, [job.opening]);
  if (!opened.ok) throw new Error(JSON.stringify(opened.error));
  const touchedMs: number[] = [];
  const spokenMs: number[] = [];
  for (let n = 1; n <= 2 * appendRounds; n += 1) {
    const step = n % 4 < 2 ? first.id : second.id;
    const event = nextEvent(job, { type: 'stepBegun', step }, startMs + n * 1000);
    const input = { by: 'voice', said: 'next', confidence: 0.95, askedBack: false } as const;
    const spoken = n % 2 === 0;
    const began = performance.now();
    const stored = await log.append(event.job, [spoken ? { ...event, input } : event]);
    (spoken ? spokenMs : touchedMs).push(performance.now() - began);
    if (!stored.ok) throw new Error(JSON.stringify(stored.error));
  }
  return { touchedMs, spokenMs };
};

/** Fills a shop of its own, asks every section, and makes a part of the review anew. */
export const measureReview = (leastEvents = usualEvents): Promise<ReviewMeasures> =>
  onProjectDisk(async (folder) => {
    const file = join(folder, 'review.db');
    const store = await openedStore(file);
    await rebuildReview(store);
    const shop = await fillReviewShop(store, leastEvents, until);
    const review = await opened(store);
    const queries: QueryMeasures[] = [];
    const day = (backDays: number): string =>
      new Date(Date.parse(until) - backDays * 86_400_000).toISOString().slice(0, 10);
    const all = { from: shop.from, to: shop.to };
    for (const ask of asks(all, { from: day(30), to: shop.to }))
      queries.push(await measureQuery(file, review, ask));
    const rows = await countRows(store);
    const rebuild = await measureRebuild(store);
    const appends = await measureAppends(store);
    await store.close();
    return { shop, fileMb: statSync(file).size / 1e6, rows, queries, rebuild, appends };
  });
