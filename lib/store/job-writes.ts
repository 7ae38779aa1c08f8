import type { JobEvent, JobState } from '../job';
import { canonicalJson } from './canonical-json';
import { headOf, linkOf, NO_LINK } from './chain';
import type { Reader } from './reader';

export interface EventRow {
  readonly event: JobEvent;
  /** The event as canonical JSON. */
  readonly text: string;
  readonly bay: string;
}

const insertJob = async (db: Reader, state: JobState): Promise<void> => {
  const { procedure, revision } = state.revision;
  await db
    .insertInto('jobs')
    .values({
      id: state.job,
      bay: state.bay,
      procedure,
      revision,
      vehicle: canonicalJson(state.vehicle),
      phase: state.phase,
      seq: state.seq,
      opened_at: state.openedAt,
      opened_by: state.openedBy,
      closed_at: state.closedAt ?? null,
    })
    .execute();
};

/** Writes the row of a job as its new state has it. */
export const saveJob = async (db: Reader, state: JobState, isNew: boolean): Promise<void> => {
  if (isNew) return insertJob(db, state);
  await db
    .updateTable('jobs')
    .set({
      bay: state.bay,
      phase: state.phase,
      seq: state.seq,
      closed_at: state.closedAt ?? null,
    })
    .where('id', '=', state.job)
    .execute();
};

export const insertEvents = async (
  db: Reader,
  rows: readonly EventRow[],
  now: Date,
): Promise<void> => {
  const stored_at = now.toISOString();
  const values = rows.map(({ event, text, bay }) => ({
    id: event.id,
    job: event.job,
    seq: event.seq,
    type: event.happening.type,
    at: event.at,
    actor: event.actor,
    bay,
    stored_at,
    event: text,
  }));
  await db.insertInto('job_events').values(values).execute();
  await linkEvents(db, rows);
};

/** Goes on with the chain of a job; all rows are of one job, in order. */
const linkEvents = async (db: Reader, rows: readonly EventRow[]): Promise<void> => {
  const job = rows[0]?.event.job;
  if (job === undefined) return;
  let before = (await headOf(db, job)) ?? NO_LINK;
  const links = rows.map(({ event, text }) => {
    before = linkOf(before, text);
    return { job, seq: event.seq, link: before };
  });
  await db.insertInto('job_links').values(links).execute();
};
