import { createHash } from 'node:crypto';
import type { Reader } from './reader';

/** Before the first event of a job. */
export const NO_LINK = '';

/** The link of an event: SHA-256, in hexadecimal, over the link before it and the event's canonical text (RFC 8785). */
export const linkOf = (before: string, text: string): string =>
  createHash('sha256').update(before).update('\n').update(text).digest('hex');

/** The link of a job's last event. */
export const headOf = async (db: Reader, job: string): Promise<string | undefined> =>
  (
    await db
      .selectFrom('job_links')
      .select('link')
      .where('job', '=', job)
      .orderBy('seq', 'desc')
      .limit(1)
      .executeTakeFirst()
  )?.link;
