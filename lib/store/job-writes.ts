import type { JobEvent, JobState } from '../job';
import { canonicalJson } from './canonical-json';
import { linkOf } from './chain';
import { compiledOnce } from './compiled';
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

const updateSeq = compiledOnce((db) => db.updateTable('jobs').set({ seq: 0 }).where('id', '=', ''));

/** Writes the row of a job as its new state has it; `before` is the state that stands there, if one does. */
export const saveJob = async (
  db: Reader,
  state: JobState,
  before: JobState | undefined,
): Promise<void> => {
  if (before === undefined) return insertJob(db, state);
  const { job, bay, phase, seq, closedAt } = state;
  if (before.bay === bay && before.phase === phase) {
    await updateSeq(db, 1, [seq, job]);
    return;
  }
  await db
    .updateTable('jobs')
    .set({ bay, phase, seq, closed_at: closedAt ?? null })
    .where('id', '=', job)
    .execute();
};

const blankEvent = {
  id: '',
  job: '',
  seq: 0,
  type: '',
  at: '',
  actor: '',
  bay: '',
  stored_at: '',
  event: '',
};
const insertRows = compiledOnce((db, count) =>
  db.insertInto('job_events').values(Array.from({ length: count }, () => blankEvent)),
);
const insertLinks = compiledOnce((db, count) =>
  db
    .insertInto('job_links')
    .values(Array.from({ length: count }, () => ({ job: '', seq: 0, link: '' }))),
);

/**
 * Adds events of one job, in order, and goes on with its chain from `head`, the link of the event before them. Answers
 * the link of the last.
 */
export const insertEvents = async (
  db: Reader,
  rows: readonly EventRow[],
  head: string,
  now: Date,
): Promise<string> => {
  const storedAt = now.toISOString();
  let link = head;
  const links: (string | number)[] = [];
  const events = rows.flatMap(({ event, text, bay }) => {
    const { id, job, seq, at, actor, happening } = event;
    link = linkOf(link, text);
    links.push(job, seq, link);
    return [id, job, seq, happening.type, at, actor, bay, storedAt, text];
  });
  await insertRows(db, rows.length, events);
  await insertLinks(db, rows.length, links);
  return link;
};
