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

/** The first thing that is wrong with the record of a job. */
export interface Break {
  readonly job: string;
  readonly seq: number;
  readonly kind: 'altered' | 'missing' | 'unlinked';
  /** One sentence for whoever looks after the shop's data. */
  readonly message: string;
}

const sentences: Readonly<Record<Break['kind'], string>> = {
  altered: 'is not what was stored: it or its place in the order was changed',
  missing: 'is missing',
  unlinked: 'has no link: it was added past the app',
};

const broken = (job: string, seq: number, kind: Break['kind']): Break => ({
  job,
  seq,
  kind,
  message: `Event ${seq} of job ${job} ${sentences[kind]}.`,
});

/**
 * Looks for the first altered, missing, added or reordered event of a job: every event must give the link that was
 * stored with it. Somebody who can rewrite the links as well is found out only by a head that was kept elsewhere.
 */
export const firstBreak = async (db: Reader, job: string): Promise<Break | undefined> => {
  const row = await db.selectFrom('jobs').select('seq').where('id', '=', job).executeTakeFirst();
  const events = await db
    .selectFrom('job_events')
    .select(['seq', 'event'])
    .where('job', '=', job)
    .orderBy('seq')
    .execute();
  const links = await db
    .selectFrom('job_links')
    .select(['seq', 'link'])
    .where('job', '=', job)
    .orderBy('seq')
    .execute();
  const last = Math.max(row?.seq ?? 0, links.at(-1)?.seq ?? 0, events.at(-1)?.seq ?? 0);
  const textOf = new Map(events.map(({ seq, event }) => [seq, event]));
  const linkAt = new Map(links.map(({ seq, link }) => [seq, link]));
  let before = NO_LINK;
  for (let seq = 1; seq <= last; seq += 1) {
    const text = textOf.get(seq);
    const link = linkAt.get(seq);
    if (text === undefined) return broken(job, seq, 'missing');
    if (link === undefined) return broken(job, seq, 'unlinked');
    if (linkOf(before, text) !== link) return broken(job, seq, 'altered');
    before = link;
  }
  return undefined;
};

/** What a look at every job gives: how much was looked at, and the first break of each job that has one. */
export interface Verification {
  readonly jobs: number;
  readonly events: number;
  readonly breaks: readonly Break[];
}

/** Looks at all jobs, one after another: no more than one job is held in memory. */
export const verifyAll = async (db: Reader): Promise<Verification> => {
  const jobs = await db
    .selectFrom('jobs')
    .select(['id', 'seq'])
    .orderBy('opened_at')
    .orderBy('id')
    .execute();
  const breaks: Break[] = [];
  for (const { id } of jobs) {
    const found = await firstBreak(db, id);
    if (found !== undefined) breaks.push(found);
  }
  return { jobs: jobs.length, events: jobs.reduce((sum, { seq }) => sum + seq, 0), breaks };
};
