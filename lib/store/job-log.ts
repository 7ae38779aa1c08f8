import { applyEvent, openJob, type JobEvent, type JobState, type Refusal } from '../job';
import { err, ok, type Result } from '../result';
import { canonicalJson } from './canonical-json';
import { jobCache, type JobCache } from './job-cache';
import { openJobIn, rebuildState } from './job-records';
import { insertEvents, saveJob, type EventRow } from './job-writes';
import type { Store } from './open';
import { readRevision } from './procedures';
import type { Reader } from './reader';
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

export interface JobLog {
  /**
   * Appends a batch to one job, all or nothing. It is on disk before the promise is kept. An event that is stored
   * already is answered with its number and not stored again, so a batch may be sent as often as needed.
   */
  append(job: string, events: readonly JobEvent[]): Promise<Result<Stored, AppendFailure>>;
}

interface Known {
  readonly job: string;
  readonly seq: number;
  readonly text: string;
}

const knownEvents = async (db: Reader, events: readonly JobEvent[]) => {
  const rows = await db
    .selectFrom('job_events')
    .select(['id', 'job', 'seq', 'event as text'])
    .where(
      'id',
      'in',
      events.map((event) => event.id),
    )
    .execute();
  return new Map<string, Known>(rows.map((row) => [row.id, row]));
};

const currentState = async (
  db: Reader,
  cache: JobCache,
  job: string,
): Promise<JobState | undefined> => {
  const row = await db.selectFrom('jobs').select('seq').where('id', '=', job).executeTakeFirst();
  return row === undefined ? undefined : (cache.get(job, row.seq) ?? rebuildState(db, job));
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

const appendIn = async (
  db: Reader,
  cache: JobCache,
  job: string,
  events: readonly JobEvent[],
  now: Date,
): Promise<Result<{ stored: Stored; state: JobState | undefined }, AppendFailure>> => {
  const known = await knownEvents(db, events);
  const before = await currentState(db, cache, job);
  const expectedSeq = (before?.seq ?? 0) + 1;
  let state = before;
  const seqs: number[] = [];
  const rows: EventRow[] = [];
  for (const [index, event] of events.entries()) {
    const text = canonicalJson(event);
    const same = known.get(event.id);
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
    state = next.value;
    known.set(event.id, { job, seq: event.seq, text });
    rows.push({ event, text, bay: state.bay });
    seqs.push(event.seq);
  }
  if (state !== undefined && rows.length > 0) {
    await saveJob(db, state, before === undefined);
    await insertEvents(db, rows, now);
  }
  return ok({ stored: { seqs, seq: state?.seq ?? 0 }, state });
};

/**
 * The append-only record of all jobs. `now` gives the time of arrival; `onStored` is told the state of a job each time
 * that something was added to it, once it is on disk.
 */
export const jobLog = (
  { db }: Store,
  now: () => Date,
  onStored: (state: JobState) => void = () => undefined,
): JobLog => {
  const cache = jobCache(64);
  return {
    async append(job, events) {
      if (events.some((event) => event.job !== job)) {
        return err({ kind: 'unknownJob' });
      }
      const done = await db
        .transaction()
        .execute((write) => appendIn(write, cache, job, events, now()));
      if (!done.ok) return done;
      if (done.value.state !== undefined) {
        cache.put(done.value.state);
        onStored(done.value.state);
      }
      return ok(done.value.stored);
    },
  };
};
