import { v7 as newId } from 'uuid';
import { demoProcedures, demoShop } from '../../demo';
import { demoMonth } from '../../demo/month';
import { replay, type JobEvent, type JobState } from '../job';
import type { ReviewWrite } from '../review';
import { canonicalJson, setUpShop, type Store } from '../store';
import { NO_LINK } from '../store/chain';
import { insertEvents, saveJob } from '../store/job-writes';
import { reviewOfJob } from '../store/review/rebuild';
import { writeReview } from '../store/review/write-review';

/** How the measured shop came about. */
export interface ReviewShop {
  readonly bays: number;
  readonly jobs: number;
  readonly events: number;
  readonly months: number;
  /** First and last day. */
  readonly from: string;
  readonly to: string;
  readonly fillS: number;
}

/** A job of the demo month with what it writes. */
interface Model {
  readonly events: readonly JobEvent[];
  readonly state: JobState;
  readonly review: readonly ReviewWrite[];
  /** Which of the demo's bays, from 0. */
  readonly bay: number;
}

const DAY_MS = 86_400_000;
export const monthDays = 30;
const bays = 60;

const models = (until: string): readonly Model[] => {
  const shop = demoShop(until);
  return demoMonth({ seed: '1', until, days: monthDays }).flatMap((events) => {
    const opening = events[0]?.happening;
    const revision = demoProcedures.find(
      (one) => opening?.type === 'jobOpened' && one.procedure === opening.procedure,
    );
    const state = revision && replay(revision, events);
    if (revision === undefined || state?.ok !== true) throw new Error('a demo job is broken');
    const bay = shop.bays.findIndex(({ id }) => id === state.value.bay);
    return [{ events, state: state.value, review: reviewOfJob(revision, events), bay }];
  });
};

/** The same job once more: in another bay, months earlier, with ids of its own. */
const copyOf = (model: Model, bay: string, backMs: number) => {
  const { events, state, review } = model;
  const ids = new Map([...events.map(({ id }) => id), state.job].map((id) => [id, newId()]));
  const renamed = (text: string): string =>
    text.replace(/[0-9a-f]{8}-[0-9a-f-]{27}/g, (id) => ids.get(id) ?? id);
  const job = ids.get(state.job) ?? '';
  const earlier = (at: string): string => new Date(Date.parse(at) - backMs).toISOString();
  const rows = events.map((event) => {
    const { happening } = event;
    const moved = {
      ...event,
      at: earlier(event.at),
      happening: happening.type === 'jobOpened' ? { ...happening, bay } : happening,
    };
    const copy = { ...moved, id: ids.get(event.id) ?? '', job };
    return { event: copy, text: renamed(canonicalJson(moved)), bay };
  });
  const place = { job, bay };
  const writes = review.map((write): ReviewWrite => {
    switch (write.kind) {
      case 'hearing':
        return {
          ...write,
          key: { ...write.key, bay, halfHourMs: write.key.halfHourMs - backMs },
        };
      case 'decided':
        return { ...write, job, id: renamed(write.id) };
      case 'followed':
        return { ...write, job };
      case 'resumed':
        return { ...write, job, atMs: write.atMs - backMs };
      case 'deviation': {
        const { row } = write;
        return {
          kind: 'deviation',
          row: { ...row, ...place, id: renamed(row.id), atMs: row.atMs - backMs },
        };
      }
      case 'job':
        return { kind: 'job', row: { ...write.row, ...place, atMs: write.row.atMs - backMs } };
      case 'reading':
        return { kind: 'reading', row: { ...write.row, ...place, atMs: write.row.atMs - backMs } };
      case 'step':
        return { kind: 'step', row: { ...write.row, ...place, atMs: write.row.atMs - backMs } };
      case 'rework':
        return { kind: 'rework', row: { ...write.row, ...place, atMs: write.row.atMs - backMs } };
      case 'hold':
        return { kind: 'hold', row: { ...write.row, ...place, atMs: write.row.atMs - backMs } };
    }
  });
  const closed = {
    ...state,
    job,
    bay,
    openedAt: earlier(state.openedAt),
    ...(state.closedAt === undefined ? {} : { closedAt: earlier(state.closedAt) }),
  };
  return { closed, rows, writes };
};

const jobsTogether = 25;

/**
 * Fills the store with at least so many events: the demo's month in each bay of a shop of sixty, and the same month
 * before it, and so on. Each job is stored as it is by the app, events, chain and review; only the rules were asked once
 * a job of the month, not once a copy.
 */
export const fillReviewShop = async (
  store: Store,
  most: number,
  until: string,
): Promise<ReviewShop> => {
  const beganMs = performance.now();
  const demo = demoShop(until);
  const shop = {
    ...demo,
    bays: Array.from({ length: bays }, (_, n) => ({ id: `bay-${n + 1}`, name: `Bay ${n + 1}` })),
  };
  const now = new Date(`${until}T00:00:00Z`);
  await setUpShop(store, { shop, pinHashes: {}, procedures: demoProcedures }, now);
  const jobs = models(until);
  const groups = bays / demo.bays.length;
  let events = 0;
  let copies = 0;
  let months = 0;
  for (; events < most; months += 1) {
    for (let group = 0; group < groups; group += 1) {
      for (let at = 0; at < jobs.length; at += jobsTogether) {
        await store.db.transaction().execute(async (write) => {
          for (const model of jobs.slice(at, at + jobsTogether)) {
            const bay = `bay-${group * demo.bays.length + model.bay + 1}`;
            const copy = copyOf(model, bay, months * monthDays * DAY_MS);
            await saveJob(write, copy.closed, undefined);
            await insertEvents(write, copy.rows, NO_LINK, now);
            await writeReview(write, copy.writes);
            events += copy.rows.length;
            copies += 1;
          }
        });
      }
    }
  }
  const day = (ms: number): string => new Date(ms).toISOString().slice(0, 10);
  return {
    bays,
    jobs: copies,
    events,
    months,
    from: day(now.getTime() - months * monthDays * DAY_MS),
    to: day(now.getTime() - DAY_MS),
    fillS: (performance.now() - beganMs) / 1000,
  };
};
