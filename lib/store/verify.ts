import { sql } from 'kysely';
import { firstAnchorBreak, type AnchorSeen } from './verify-anchors';
import { linkOf, NO_LINK } from './chain';
import type { Reader } from './reader';

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

const eventsOf = (db: Reader, job: string) =>
  db
    .selectFrom('job_events')
    .select(['entry', 'id', 'seq', 'type', 'at', 'actor', 'event'])
    .where('job', '=', job)
    .orderBy('seq')
    .execute();
type EventRow = Awaited<ReturnType<typeof eventsOf>>[number];

/** The columns that lists are made from must say what the event says. */
const columnsOf = ({ id, seq, type, at, actor }: EventRow, job: string): string =>
  JSON.stringify([id, job, seq, type, at, actor]);

const told = (text: string): string => {
  const { id, job, seq, happening, at, actor } = JSON.parse(text) as Record<string, unknown>;
  const type =
    typeof happening === 'object' && happening !== null && 'type' in happening
      ? happening.type
      : undefined;
  return JSON.stringify([id, job, seq, type, at, actor]);
};

/**
 * Looks for the first altered, missing, added or reordered event of a job: every event must give the link that was
 * stored with it, have arrived after the one before it, and be what its columns say. Somebody who can rewrite the links
 * as well is found out by the anchors, and who rewrites these too only by one that was kept elsewhere.
 */
export const firstBreak = async (db: Reader, job: string): Promise<Break | undefined> => {
  const row = await db.selectFrom('jobs').select('seq').where('id', '=', job).executeTakeFirst();
  const events = await eventsOf(db, job);
  const links = await db
    .selectFrom('job_links')
    .select(['seq', 'link'])
    .where('job', '=', job)
    .orderBy('seq')
    .execute();
  const last = Math.max(row?.seq ?? 0, links.at(-1)?.seq ?? 0, events.at(-1)?.seq ?? 0);
  const eventAt = new Map(events.map((event) => [event.seq, event]));
  const linkAt = new Map(links.map(({ seq, link }) => [seq, link]));
  let before = NO_LINK;
  let arrived = 0;
  for (let seq = 1; seq <= last; seq += 1) {
    const event = eventAt.get(seq);
    const link = linkAt.get(seq);
    if (event === undefined) return broken(job, seq, 'missing');
    if (link === undefined) return broken(job, seq, 'unlinked');
    if (linkOf(before, event.event) !== link) return broken(job, seq, 'altered');
    if (event.entry <= arrived || told(event.event) !== columnsOf(event, job))
      return broken(job, seq, 'altered');
    before = link;
    arrived = event.entry;
  }
  return undefined;
};

/** Numbers of arrival have no gaps; where there is one, a whole job may be gone. */
const firstGap = async (db: Reader): Promise<string | undefined> => {
  const { rows } = await sql<{ entry: number; job: string; seq: number }>`
    select entry, job, seq from job_events as one where entry > 1
    and not exists (select 1 from job_events where entry = one.entry - 1)
    order by entry limit 1`.execute(db);
  const [after] = rows;
  return after === undefined
    ? undefined
    : `What arrived right before event ${after.seq} of job ${after.job} is missing.`;
};

/** What a look at every job gives: how much was looked at, and the first break of each job that has one. */
export interface Verification {
  readonly jobs: number;
  readonly events: number;
  readonly breaks: readonly Break[];
  /** How many anchors there are, and the last. */
  readonly anchors: number;
  readonly lastAnchor: AnchorSeen | undefined;
  /** Everything that is wrong, in one sentence each, the breaks of the jobs first. */
  readonly faults: readonly string[];
}

/** Looks at all jobs, one after another, and at the anchors: no more than one job is held in memory. */
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
  const gap = await firstGap(db);
  const anchors = await firstAnchorBreak(db);
  return {
    jobs: jobs.length,
    events: jobs.reduce((sum, { seq }) => sum + seq, 0),
    breaks,
    anchors: anchors.count,
    lastAnchor: anchors.last,
    faults: [...breaks.map(({ message }) => message), gap, anchors.fault].filter(
      (fault) => fault !== undefined,
    ),
  };
};
