import { applyEvent, openJob, type JobEvent, type JobState } from '../../job';
import type { Revision } from '../../procedure';
import { err, errorText, ok, type Result } from '../../result';
import { projectEvent, reviewVersion, type ReviewWrite } from '../../review';
import { readJob } from '../job-records';
import type { Store } from '../open';
import type { Reader } from '../reader';
import { reviewTables } from './tables';
import { writeReview } from './write-review';

/** What all events of a job write. Throws where the rules refuse one: then the record has been tampered with. */
export const reviewOfJob = (
  revision: Revision,
  events: readonly JobEvent[],
): readonly ReviewWrite[] => {
  let before: JobState | undefined;
  return events.flatMap((event) => {
    const after = before === undefined ? openJob(revision, event) : applyEvent(before, event);
    if (!after.ok)
      throw new Error(`Event ${event.seq} of job ${event.job} is broken: ${after.error.message}`);
    const writes = projectEvent(before, after.value, event);
    before = after.value;
    return writes;
  });
};

/** Empties the review where another version of it was made. */
const begin = (store: Store): Promise<void> =>
  store.db.transaction().execute(async (write) => {
    const there = await write.selectFrom('review_state').select('version').executeTakeFirst();
    if (there?.version === reviewVersion) return;
    for (const table of reviewTables) await write.deleteFrom(table).execute();
    await write.deleteFrom('review_state').execute();
    await write
      .insertInto('review_state')
      .values({ id: 1, version: reviewVersion, complete: 0 })
      .execute();
  });

const missingAfter = async (db: Reader, id: string, most: number): Promise<readonly string[]> =>
  (
    await db
      .selectFrom('jobs')
      .select('id')
      .where('id', '>', id)
      .where((where) =>
        where.not(
          where.exists(
            where.selectFrom('review_jobs').select('job').whereRef('job', '=', 'jobs.id'),
          ),
        ),
      )
      .orderBy('id')
      .limit(most)
      .execute()
  ).map((row) => row.id);

/** Jobs that are taken in with one transaction: what waits to be stored meanwhile waits no longer than for these. */
const jobsTogether = 4;

/** What a job writes, or why its record makes none. */
const projected = async (
  db: Reader,
  id: string,
): Promise<Result<readonly ReviewWrite[], string>> => {
  try {
    const record = await readJob(db, id);
    return record === undefined
      ? err(`Job ${id} is gone.`)
      : ok(reviewOfJob(record.revision, record.events));
  } catch (error) {
    return err(errorText(error));
  }
};

const takeIn = (store: Store, ids: readonly string[]): Promise<readonly string[]> =>
  store.db.transaction().execute(async (write) => {
    const faults: string[] = [];
    for (const id of ids) {
      const writes = await projected(write, id);
      if (writes.ok) await writeReview(write, writes.value);
      else faults.push(writes.error);
    }
    return faults;
  });

/** How many jobs were taken in, and why others could not be. */
export interface Rebuilt {
  readonly jobs: number;
  readonly faults: readonly string[];
}

/**
 * Takes every job into the review that is not in it, a few at a time; all of them anew after an update that makes the
 * review in another way. May be broken off at any moment and goes on where it was. `pause` is awaited between two
 * transactions, so that what is to be stored meanwhile gets its turn. One alone may be at work.
 */
export const rebuildReview = async (
  store: Store,
  pause: () => Promise<void> = () => Promise.resolve(),
): Promise<Rebuilt> => {
  await begin(store);
  const faults: string[] = [];
  let jobs = 0;
  for (let last = ''; ;) {
    const ids = await missingAfter(store.db, last, jobsTogether);
    if (ids.length === 0) break;
    faults.push(...(await takeIn(store, ids)));
    jobs += ids.length;
    last = ids.at(-1) ?? last;
    await pause();
  }
  // Whatever was opened since is in it from its first event on.
  await store.db.updateTable('review_state').set({ complete: 1 }).execute();
  return { jobs: jobs - faults.length, faults };
};
