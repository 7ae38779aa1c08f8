import { replay, type JobEvent, type JobState } from '../job';
import { err, ok, type Result } from '../result';
import { canonicalJson } from './canonical-json';
import { NO_LINK } from './chain';
import { insertEvents, saveJob } from './job-writes';
import type { Store } from './open';
import { readRevision } from './procedures';
import type { Reader } from './reader';
import { reviewOfJob } from './review/rebuild';
import { writeReview } from './review/write-review';
import { readBay } from './shop-records';

/** How many jobs were added, and how many were there already. */
export interface ClosedJobsAdded {
  readonly added: number;
  readonly there: number;
}

const replayed = async (
  db: Reader,
  events: readonly JobEvent[],
): Promise<Result<JobState, string>> => {
  const happening = events[0]?.happening;
  if (happening?.type !== 'jobOpened') return err('A record does not begin with the opening.');
  const revision = await readRevision(db, happening.procedure, happening.revision);
  if (revision === undefined) return err(`There is no published ${happening.procedure}.`);
  const state = replay(revision, events);
  if (!state.ok) return err(`Event ${state.error.at} is refused: ${state.error.message}`);
  if (state.value.phase !== 'closed') return err('Only closed jobs can be added as a whole.');
  return (await readBay(db, state.value.bay)) === undefined
    ? err(`The shop has no bay ${state.value.bay}.`)
    : ok(state.value);
};

const addOne = async (
  db: Reader,
  events: readonly JobEvent[],
  now: Date,
): Promise<Result<boolean, string>> => {
  const id = events[0]?.job ?? '';
  const there = await db.selectFrom('jobs').select('id').where('id', '=', id).executeTakeFirst();
  if (there !== undefined) return ok(false);
  const state = await replayed(db, events);
  if (!state.ok) return state;
  await saveJob(db, state.value, undefined);
  const { bay } = state.value;
  const rows = events.map((event) => ({ event, text: canonicalJson(event), bay }));
  await insertEvents(db, rows, NO_LINK, now);
  await writeReview(db, reviewOfJob(state.value.revision, events));
  return ok(true);
};

/**
 * Adds whole records of closed jobs, such as of a past month; each must replay by the rules that every event obeys.
 * They stand in no bay's way. A job that is there already is left as it is. On the first fault nothing more is added.
 */
export const addClosedJobs = async (
  { db }: Store,
  jobs: readonly (readonly JobEvent[])[],
  now: Date,
): Promise<Result<ClosedJobsAdded, string>> => {
  let added = 0;
  for (const events of jobs) {
    const one = await db.transaction().execute((write) => addOne(write, events, now));
    if (!one.ok) return one;
    if (one.value) added += 1;
  }
  return ok({ added, there: jobs.length - added });
};
