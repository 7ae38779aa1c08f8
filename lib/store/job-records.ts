import { jobEventSchema, replay, type JobEvent, type JobState } from '../job';
import type { Revision } from '../procedure';
import { vehicleSchema, type Vehicle } from '../shop';
import { z } from 'zod';
import { readRevision } from './procedures';
import type { Reader } from './reader';

const phaseSchema = z.enum(['running', 'held', 'closed']);

/** A job as lists show it. */
export interface JobSummary {
  readonly id: string;
  readonly bay: string;
  readonly procedure: string;
  readonly revision: number;
  readonly title: string;
  readonly vehicle: Vehicle;
  readonly phase: JobState['phase'];
  /** Number of its last stored event. */
  readonly seq: number;
  readonly openedAt: string;
  readonly openedBy: string;
  readonly closedAt?: string;
}

/** A whole job: its revision and all its events in order. */
export interface JobRecord {
  readonly summary: JobSummary;
  readonly revision: Revision;
  readonly events: readonly JobEvent[];
}

const summaries = (db: Reader) =>
  db
    .selectFrom('jobs')
    .innerJoin('procedure_revisions as sheet', (join) =>
      join
        .onRef('sheet.procedure', '=', 'jobs.procedure')
        .onRef('sheet.revision', '=', 'jobs.revision'),
    )
    .selectAll('jobs')
    .select('sheet.title');

type SummaryRow = Awaited<ReturnType<ReturnType<typeof summaries>['execute']>>[number];

const toSummary = (row: SummaryRow): JobSummary => ({
  id: row.id,
  bay: row.bay,
  procedure: row.procedure,
  revision: row.revision,
  title: row.title,
  vehicle: vehicleSchema.parse(JSON.parse(row.vehicle)),
  phase: phaseSchema.parse(row.phase),
  seq: row.seq,
  openedAt: row.opened_at,
  openedBy: row.opened_by,
  ...(row.closed_at === null ? {} : { closedAt: row.closed_at }),
});

/** The jobs that are not closed, by bay. */
export const openJobs = async (db: Reader): Promise<readonly JobSummary[]> =>
  (await summaries(db).where('phase', '<>', 'closed').orderBy('bay').execute()).map(toSummary);

/** The job that is open in a bay. There is never more than one. */
export const openJobIn = async (db: Reader, bay: string): Promise<JobSummary | undefined> => {
  const row = await summaries(db)
    .where('bay', '=', bay)
    .where('phase', '<>', 'closed')
    .executeTakeFirst();
  return row === undefined ? undefined : toSummary(row);
};

/** All jobs, in the order in which they were opened. */
export const jobIds = async (db: Reader): Promise<readonly string[]> =>
  (await db.selectFrom('jobs').select('id').orderBy('opened_at').orderBy('id').execute()).map(
    ({ id }) => id,
  );

/** The bay of a job, if there is one of that id. */
export const jobBay = async (db: Reader, job: string): Promise<string | undefined> =>
  (await db.selectFrom('jobs').select('bay').where('id', '=', job).executeTakeFirst())?.bay;

/** The stored text of each event of a job, in order. */
export const eventTexts = async (db: Reader, job: string): Promise<readonly string[]> => {
  const rows = await db
    .selectFrom('job_events')
    .select('event')
    .where('job', '=', job)
    .orderBy('seq')
    .execute();
  return rows.map(({ event }) => event);
};

export const readEvents = async (db: Reader, job: string): Promise<readonly JobEvent[]> =>
  (await eventTexts(db, job)).map((text) => jobEventSchema.parse(JSON.parse(text)));

/** A job with its revision and events, if there is one of that id. */
export const readJob = async (db: Reader, id: string): Promise<JobRecord | undefined> => {
  const row = await summaries(db).where('id', '=', id).executeTakeFirst();
  if (row === undefined) return undefined;
  const revision = await readRevision(db, row.procedure, row.revision);
  if (revision === undefined) throw new Error(`The revision of job ${id} is missing.`);
  return { summary: toSummary(row), revision, events: await readEvents(db, id) };
};

/** The state that a whole record makes. Throws where it makes none: then it has been tampered with. */
export const stateOf = ({ summary, revision, events }: JobRecord): JobState => {
  const state = replay(revision, events);
  if (!state.ok)
    throw new Error(`The record of job ${summary.id} is broken: ${state.error.message}`);
  return state.value;
};

/** The state that a job's stored events make. Throws where they make none: then the record has been tampered with. */
export const rebuildState = async (db: Reader, job: string): Promise<JobState> => {
  const record = await readJob(db, job);
  if (record === undefined) throw new Error(`The record of job ${job} is broken: it is missing`);
  return stateOf(record);
};
