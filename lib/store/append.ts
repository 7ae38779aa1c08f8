import { applyEvent, openJob, type JobEvent, type JobState, type Refusal } from '../job';
import { err, ok, type Result } from '../result';
import { projectEvent, type ReviewWrite } from '../review';
import { canonicalJson } from './canonical-json';
import { headOf, NO_LINK } from './chain';
import { compiledOnce } from './compiled';
import type { JobCache, Standing } from './job-cache';
import { openJobIn, rebuildState } from './job-records';
import { insertEvents, saveJob, type EventRow } from './job-writes';
import { readRevision } from './procedures';
import type { Reader } from './reader';
import { reviewStored } from './review/write-review';
import { readBay } from './shop-records';

/** All events of the batch are on disk, these are their numbers; `seq` is the job's last. */
export interface Stored {
  readonly seqs: readonly number[];
  readonly seq: number;
}

/** Why a batch was not stored. Nothing of it was. `index` is the first event that could not be. */
export type AppendFailure =
  | {
      readonly kind: 'refused';
      readonly refusal: Refusal;
      readonly index: number;
      readonly expectedSeq: number;
    }
  /** Another event stands there: somebody else wrote to this job in the meantime. */
  | { readonly kind: 'conflict'; readonly index: number; readonly expectedSeq: number }
  /** That id is stored with other content. */
  | { readonly kind: 'idReused'; readonly index: number; readonly expectedSeq: number }
  | { readonly kind: 'unknownJob' | 'unknownBay' | 'unknownRevision' }
  | { readonly kind: 'bayTaken'; readonly job: string };

/** A batch of events for one job. */
export interface Append {
  readonly job: string;
  readonly events: readonly JobEvent[];
}

interface Known {
  readonly job: string;
  readonly seq: number;
  readonly text: string;
}

/** What a transaction knows of the jobs that it writes to; only good as long as it lasts. */
export interface Sight {
  readonly db: Reader;
  readonly now: Date;
  /** Stored events by id. */
  readonly known: Map<string, Known>;
  /** Jobs that are there, as they stand now. */
  readonly standing: Map<string, Standing>;
}

const selectKnown = compiledOnce((db, count) =>
  db
    .selectFrom('job_events')
    .select(['id', 'job', 'seq', 'event as text'])
    .where('id', 'in', Array<string>(count).fill('')),
);
const selectSeqs = compiledOnce((db, count) =>
  db.selectFrom('jobs').select(['id', 'seq']).where('id', 'in', Array<string>(count).fill('')),
);

/** Looks at all that a group of batches asks about, in two questions to the database. */
export const lookAt = async (
  db: Reader,
  cache: JobCache,
  group: readonly Append[],
  now: Date,
): Promise<Sight> => {
  const ids = group.flatMap(({ events }) => events.map(({ id }) => id));
  const jobs = [...new Set(group.map(({ job }) => job))];
  const events = await selectKnown(db, ids.length, ids);
  const seqs = await selectSeqs(db, jobs.length, jobs);
  const standing = new Map<string, Standing>();
  for (const { id, seq } of seqs.rows) {
    const there = cache.get(id, seq) ?? {
      state: await rebuildState(db, id),
      head: (await headOf(db, id)) ?? NO_LINK,
    };
    standing.set(id, there);
  }
  return { db, now, known: new Map(events.rows.map((row) => [row.id, row])), standing };
};

const open = async (
  db: Reader,
  event: JobEvent,
): Promise<Result<JobState, Refusal | AppendFailure>> => {
  const { happening } = event;
  if (happening.type !== 'jobOpened') return err({ kind: 'unknownJob' });
  if ((await readBay(db, happening.bay)) === undefined) return err({ kind: 'unknownBay' });
  const revision = await readRevision(db, happening.procedure, happening.revision);
  if (revision === undefined) return err({ kind: 'unknownRevision' });
  const taken = await openJobIn(db, happening.bay);
  return taken === undefined ? openJob(revision, event) : err({ kind: 'bayTaken', job: taken.id });
};

/** The bay that a job was moved to must be there, and free. */
const moveFault = async (
  db: Reader,
  before: JobState | undefined,
  after: JobState,
): Promise<AppendFailure | undefined> => {
  if (before === undefined || before.bay === after.bay) return undefined;
  if ((await readBay(db, after.bay)) === undefined) return { kind: 'unknownBay' };
  const taken = await openJobIn(db, after.bay);
  return taken === undefined || taken.id === after.job
    ? undefined
    : { kind: 'bayTaken', job: taken.id };
};

interface Judged {
  readonly stored: Stored;
  readonly state: JobState | undefined;
  /** Those that are not stored yet. */
  readonly rows: readonly EventRow[];
  /** What they mean for the review. */
  readonly review: readonly ReviewWrite[];
}

/** Whether all of a batch may be stored; nothing is written. */
const judge = async (
  { db, known, standing }: Sight,
  { job, events }: Append,
): Promise<Result<Judged, AppendFailure>> => {
  let state = standing.get(job)?.state;
  const expectedSeq = (state?.seq ?? 0) + 1;
  const seqs: number[] = [];
  const rows: EventRow[] = [];
  const review: ReviewWrite[] = [];
  for (const [index, event] of events.entries()) {
    const text = canonicalJson(event);
    const twin = rows.find((row) => row.event.id === event.id);
    const same = twin === undefined ? known.get(event.id) : { job, seq: twin.event.seq, ...twin };
    if (same !== undefined) {
      if (same.job !== job || same.text !== text)
        return err({ kind: 'idReused', index, expectedSeq });
      seqs.push(same.seq);
      continue;
    }
    if (state !== undefined && event.seq < expectedSeq) {
      return err({ kind: 'conflict', index, expectedSeq });
    }
    const next = state === undefined ? await open(db, event) : applyEvent(state, event);
    if (!next.ok) {
      return 'kind' in next.error
        ? err(next.error)
        : err({ kind: 'refused', refusal: next.error, index, expectedSeq });
    }
    const fault = await moveFault(db, state, next.value);
    if (fault !== undefined) return err(fault);
    review.push(...projectEvent(state, next.value, event));
    state = next.value;
    rows.push({ event, text, bay: state.bay });
    seqs.push(event.seq);
  }
  return ok({ stored: { seqs, seq: state?.seq ?? 0 }, state, rows, review });
};

/** What became of a batch: its answer and, where anything was added, the state of its job. */
export type Appended = Result<
  { readonly stored: Stored; readonly state: JobState | undefined },
  AppendFailure
>;

/** Stores a batch, all or nothing, and keeps the sight of its transaction true. Where it throws, that must be undone. */
export const appendIn = async (sight: Sight, append: Append): Promise<Appended> => {
  const judged = await judge(sight, append);
  if (!judged.ok) return judged;
  const { stored, state, rows, review } = judged.value;
  if (state === undefined || rows.length === 0) return ok({ stored, state: undefined });
  const { db, known, standing, now } = sight;
  const before = standing.get(append.job);
  await saveJob(db, state, before?.state);
  const head = await insertEvents(db, rows, before?.head ?? NO_LINK, now);
  await reviewStored(db, state.job, review);
  standing.set(state.job, { state, head });
  for (const { event, text } of rows) known.set(event.id, { job: state.job, seq: event.seq, text });
  return ok({ stored, state });
};
