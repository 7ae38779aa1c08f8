import { applyEvents, replay, type JobEvent, type JobState } from '@/lib/job';
import type { StoredJob } from '@/lib/outbox';
import { ok, type Result } from '@/lib/result';
import type { BayNow, KioskLink, SignedOn } from '../link';
import type { KeptJob, KioskDisk } from './disk';

/** What a kiosk begins with. */
export interface Opened {
  readonly signedOn: SignedOn | undefined;
  readonly job: JobState | undefined;
  /** Done here before the page was loaded and not yet acknowledged; `job` is the job after it. */
  readonly waiting: readonly JobEvent[];
  readonly problem: string | undefined;
}

/** The record up to where `waiting` goes on, and `waiting` on top; nothing where they do not join. */
const joined = (record: StoredJob, waiting: readonly JobEvent[]): JobState | undefined => {
  const from = waiting[0]?.seq ?? Infinity;
  const base = replay(
    record.revision,
    record.events.filter(({ seq }) => seq < from),
  );
  return base.ok ? onto(base.value, waiting) : undefined;
};

const onto = (base: JobState, waiting: readonly JobEvent[]): JobState | undefined => {
  const after = applyEvents(base, waiting);
  return after.ok ? after.value : undefined;
};

/** The job with what waits on top of it, from wherever it can be had. */
const jobWith = async (
  id: string,
  { record, waiting }: KeptJob,
  shown: JobState | undefined,
  link: KioskLink,
): Promise<JobState | undefined> => {
  const kept = record === undefined ? undefined : joined(record, waiting);
  if (kept !== undefined) return kept;
  const read = await link.readRecord(id);
  if (!read.ok) return shown?.job === id ? onto(shown, waiting) : undefined;
  const mine = joined(read.value, waiting);
  if (mine !== undefined) return mine;
  // The two do not join, which a person will be shown when it is sent.
  const theirs = replay(read.value.revision, read.value.events);
  return theirs.ok ? theirs.value : undefined;
};

/** The job that stands in the bay where nothing of it waits here. */
const jobWithout = async (
  now: Result<BayNow, string>,
  kept: JobState | undefined,
  shown: JobState | undefined,
  link: KioskLink,
): Promise<Result<JobState | undefined, string>> => {
  // Without the server, what this kiosk last had; the page itself may be an old one.
  if (!now.ok) return ok(kept ?? shown);
  const { job } = now.value;
  if (job === undefined) return ok(undefined);
  return shown?.job === job.id && shown.seq >= job.seq ? ok(shown) : link.readJob(job.id);
};

const cannotShow =
  'What was done here is kept and will be stored. The job is shown again once the server is back.';

/**
 * What a kiosk begins with: what it has done and the store has not comes first; then what the server says; without
 * the server, what this kiosk last had. `shown` is what the page came with.
 */
export const openBay = async (
  disk: KioskDisk,
  link: KioskLink,
  bay: string,
  shown: Pick<Opened, 'job' | 'signedOn'>,
): Promise<Opened> => {
  const [keptBay, now] = await Promise.all([disk.readBay(bay), link.readBay(bay)]);
  const lastHere = keptBay.ok ? keptBay.value : undefined;
  const signedOn = now.ok ? now.value.signedOn : (lastHere ?? shown).signedOn;
  // Without the server the page may be an old one, and have a job that is over.
  const isOld = !now.ok && lastHere !== undefined && lastHere.job !== shown.job?.job;
  const page = isOld ? undefined : shown.job;
  const id = lastHere?.job ?? page?.job;
  const kept = id === undefined ? undefined : await disk.readJob(id);
  if (!keptBay.ok || kept?.ok === false) {
    const problem = keptBay.ok ? (kept?.ok === false ? kept.error : undefined) : keptBay.error;
    return { signedOn, job: shown.job, waiting: [], problem };
  }
  if (id === undefined || kept === undefined || kept.value.waiting.length === 0) {
    const record = kept?.value.record;
    const keptJob = record === undefined ? undefined : joined(record, []);
    const job = await jobWithout(now, keptJob, page, link);
    return job.ok
      ? { signedOn, job: job.value, waiting: [], problem: undefined }
      : { signedOn, job: page, waiting: [], problem: job.error };
  }
  const { waiting } = kept.value;
  const job = await jobWith(id, kept.value, page, link);
  return job === undefined
    ? { signedOn, job: undefined, waiting, problem: cannotShow }
    : { signedOn, job, waiting, problem: undefined };
};
