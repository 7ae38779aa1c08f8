import { anchorHash, headsBetween, NO_ANCHOR, type Head } from './anchors';
import type { Reader } from './reader';

/** An anchor as it can be written down and kept elsewhere. */
export interface AnchorSeen {
  readonly day: string;
  readonly hash: string;
}

const headsOf = (db: Reader, number: number): Promise<readonly Head[]> =>
  db
    .selectFrom('anchor_heads')
    .select(['job', 'seq', 'link'])
    .where('number', '=', number)
    .orderBy('job')
    .execute();

const linkAt = async (db: Reader, { job, seq }: Head): Promise<string | undefined> =>
  (
    await db
      .selectFrom('job_links')
      .select('link')
      .where('job', '=', job)
      .where('seq', '=', seq)
      .executeTakeFirst()
  )?.link;

/** Up to where each job was right at the anchors before. */
type GoodUpTo = Map<string, number>;

const headFault = async (
  db: Reader,
  head: Head,
  day: string,
  goodUpTo: GoodUpTo,
): Promise<string | undefined> => {
  const link = await linkAt(db, head);
  const { job, seq } = head;
  if (link === head.link) {
    goodUpTo.set(job, seq);
    return undefined;
  }
  const first = (goodUpTo.get(job) ?? 0) + 1;
  const which = first === seq ? `Event ${seq}` : `An event from ${first} to ${seq}`;
  return link === undefined
    ? `Event ${seq} of job ${job} is missing: it was there on ${day}.`
    : `${which} of job ${job} is not what was stored on ${day}: it was rewritten with its links.`;
};

interface AnchorRow {
  readonly number: number;
  readonly day: string;
  readonly entry: number;
  readonly previous: string;
  readonly hash: string;
}

const sameHead = (one: Head, other: Head | undefined): boolean =>
  one.job === other?.job && one.seq === other.seq && one.link === other.link;

const faultOf = async (
  db: Reader,
  anchor: AnchorRow,
  before: AnchorRow | undefined,
  goodUpTo: GoodUpTo,
): Promise<string | undefined> => {
  const { number, day, entry, previous, hash } = anchor;
  if (number !== (before?.number ?? 0) + 1) return `The anchor before that of ${day} is missing.`;
  const heads = await headsOf(db, number);
  const chained = previous === (before?.hash ?? NO_ANCHOR);
  if (!chained || anchorHash(previous, { day, entry, heads }) !== hash)
    return `The anchor of ${day} is not what was stored: it was changed.`;
  for (const head of heads) {
    const fault = await headFault(db, head, day, goodUpTo);
    if (fault !== undefined) return fault;
  }
  const now = await headsBetween(db, before?.entry ?? 0, entry);
  const other = now.find((head, place) => !sameHead(head, heads[place])) ?? heads[now.length];
  return other === undefined
    ? undefined
    : `Events of job ${other.job} have another order of arrival than on ${day}.`;
};

/** Goes through all anchors, oldest first, up to the first that does not hold. */
export const firstAnchorBreak = async (
  db: Reader,
): Promise<{ count: number; last: AnchorSeen | undefined; fault: string | undefined }> => {
  const anchors = await db.selectFrom('anchors').selectAll().orderBy('number').execute();
  const goodUpTo: GoodUpTo = new Map();
  let fault: string | undefined;
  let before: AnchorRow | undefined;
  for (const anchor of anchors) {
    fault = await faultOf(db, anchor, before, goodUpTo);
    if (fault !== undefined) break;
    before = anchor;
  }
  const newest = anchors.at(-1);
  return {
    count: anchors.length,
    last: newest && { day: newest.day, hash: newest.hash },
    fault,
  };
};
