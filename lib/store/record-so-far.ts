import { jobEventSchema, type JobEvent } from '../job';
import type { Revision } from '../procedure';
import { eventTexts } from './job-records';
import type { Store } from './open';
import { readRevision } from './procedures';

/** A job's record as far as it can be read, for whoever looks at one that may have been tampered with. */
export interface RecordSoFar {
  readonly revision: Revision;
  /** From the first on, up to one that cannot be read. */
  readonly events: readonly JobEvent[];
  /** How many are stored. */
  readonly stored: number;
}

const readEvent = (text: string): JobEvent | undefined => {
  try {
    return jobEventSchema.safeParse(JSON.parse(text)).data;
  } catch {
    return undefined; // No JSON: as unreadable as an event without a kind.
  }
};

/** Nothing where there is no such job. Throws where its sheet is missing. */
export const recordSoFar = async ({ db }: Store, job: string): Promise<RecordSoFar | undefined> => {
  const row = await db
    .selectFrom('jobs')
    .select(['procedure', 'revision'])
    .where('id', '=', job)
    .executeTakeFirst();
  if (row === undefined) return undefined;
  const revision = await readRevision(db, row.procedure, row.revision);
  if (revision === undefined) throw new Error(`The revision of job ${job} is missing.`);
  const texts = await eventTexts(db, job);
  const events: JobEvent[] = [];
  for (const text of texts) {
    const event = readEvent(text);
    if (event === undefined) break;
    events.push(event);
  }
  return { revision, events, stored: texts.length };
};
