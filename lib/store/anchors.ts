import { createHash } from 'node:crypto';
import { canonicalJson } from './canonical-json';
import type { Store } from './open';
import type { Reader } from './reader';

/** How far the chain of a job had come: the link of its event `seq`. */
export interface Head {
  readonly job: string;
  readonly seq: number;
  readonly link: string;
}

/** Before the first anchor. */
export const NO_ANCHOR = '';

/** What an anchor holds fast. */
export interface Anchored {
  /** The UTC day on which it was made. */
  readonly day: string;
  /** The last event that had arrived by then, over all jobs. */
  readonly entry: number;
  /** Of all jobs that went on since the anchor before, by job. */
  readonly heads: readonly Head[];
}

/**
 * SHA-256, in hexadecimal, over the anchor before it and the canonical text (RFC 8785) of what it holds fast. Since the
 * one before is part of it, it stands for the chains of all jobs, also of those that did not go on.
 */
export const anchorHash = (previous: string, { day, entry, heads }: Anchored): string =>
  createHash('sha256')
    .update(previous)
    .update('\n')
    .update(canonicalJson({ day, entry, heads }))
    .digest('hex');

/** How far the jobs had come with the event that arrived as `upTo`, of those that went on after `after`; by job. */
export const headsBetween = (db: Reader, after: number, upTo: number): Promise<readonly Head[]> =>
  db
    .selectFrom(
      db
        .selectFrom('job_events')
        .select((one) => ['job', one.fn.max('seq').as('seq')])
        .where('entry', '>', after)
        .where('entry', '<=', upTo)
        .groupBy('job')
        .as('last'),
    )
    .innerJoin('job_links as links', (join) =>
      join.onRef('links.job', '=', 'last.job').onRef('links.seq', '=', 'last.seq'),
    )
    .select(['links.job', 'links.seq', 'links.link'])
    .orderBy('links.job')
    .execute();

const lastEntry = async (db: Reader): Promise<number> =>
  (
    await db
      .selectFrom('job_events')
      .select('entry')
      .orderBy('entry', 'desc')
      .limit(1)
      .executeTakeFirst()
  )?.entry ?? 0;

/** The UTC day of a time. */
export const dayOf = (now: Date): string => now.toISOString().slice(0, 10);

/**
 * Makes the anchor of the day, over everything stored so far, unless the last one is of that day or nothing is stored.
 * To be called in a transaction that holds the write lock.
 */
export const anchorDay = async (db: Reader, now: Date): Promise<void> => {
  const day = dayOf(now);
  const last = await db
    .selectFrom('anchors')
    .selectAll()
    .orderBy('number', 'desc')
    .limit(1)
    .executeTakeFirst();
  // Another day, not a later one: after a clock that ran ahead, the days go on all the same.
  if (last?.day === day) return;
  const entry = await lastEntry(db);
  if (entry === 0) return;
  const number = (last?.number ?? 0) + 1;
  const previous = last?.hash ?? NO_ANCHOR;
  const heads = await headsBetween(db, last?.entry ?? 0, entry);
  const hash = anchorHash(previous, { day, entry, heads });
  const made_at = now.toISOString();
  await db.insertInto('anchors').values({ number, day, made_at, entry, previous, hash }).execute();
  for (const head of heads)
    await db
      .insertInto('anchor_heads')
      .values({ number, ...head })
      .execute();
};

/** The same by itself, for days on which nobody writes. */
export const anchorStore = ({ db }: Store, now: Date): Promise<void> =>
  db.transaction().execute((write) => anchorDay(write, now));
