import type { JobEvent, JobState } from '../job';
import { err, ok, type Result } from '../result';
import { anchorDay, dayOf } from './anchors';
import {
  appendIn,
  lookAt,
  type Append,
  type Appended,
  type AppendFailure,
  type Stored,
} from './append';
import { inGroups } from './in-groups';
import { jobCache, type JobCache } from './job-cache';
import type { Store } from './open';
import type { Reader } from './reader';

export interface JobLog {
  /**
   * Appends a batch to one job, all or nothing. It is on disk before the promise is kept. An event that is stored
   * already is answered with its number and not stored again, so a batch may be sent as often as needed.
   */
  append(job: string, events: readonly JobEvent[]): Promise<Result<Stored, AppendFailure>>;
}

/** So many batches share one sync of the disk at most, and the states of so many jobs are at hand. */
const mostTogether = 64;
const jobsAtHand = 256;

/** Stores what many ask for in one transaction: either all of it is on disk, or, where it throws, nothing. */
const appendAll = async (
  db: Reader,
  cache: JobCache,
  group: readonly Append[],
  now: Date,
  anchorFirst: boolean,
): Promise<readonly Appended[]> => {
  const { appended, standing } = await db.transaction().execute(async (write) => {
    if (anchorFirst) await anchorDay(write, now);
    const sight = await lookAt(write, cache, group, now);
    const answers: Appended[] = [];
    for (const append of group) answers.push(await appendIn(sight, append));
    return { appended: answers, standing: sight.standing };
  });
  for (const one of standing.values()) cache.put(one);
  return appended;
};

/**
 * The append-only record of all jobs; before the first batch of a day comes the day's anchor. `now` gives the time of
 * arrival; `onStored` is told the state of a job each time that something was added to it, once it is on disk.
 */
export const jobLog = (
  { db }: Store,
  now: () => Date,
  onStored: (state: JobState) => void = () => undefined,
): JobLog => {
  const cache = jobCache(jobsAtHand);
  let anchoredOn = '';
  const append = inGroups(async (group: readonly Append[]) => {
    const at = now();
    const day = dayOf(at);
    const appended = await appendAll(db, cache, group, at, day !== anchoredOn);
    anchoredOn = day;
    return appended;
  }, mostTogether);
  return {
    async append(job, events) {
      if (events.some((event) => event.job !== job)) return err({ kind: 'unknownJob' });
      const done = await append({ job, events });
      if (!done.ok) return done;
      if (done.value.state !== undefined) onStored(done.value.state);
      return ok(done.value.stored);
    },
  };
};
