import { sql } from 'kysely';
import { z } from 'zod';
import {
  mostRows,
  reworkFactsSchema,
  reworkSteps,
  whyOf,
  type Reopening,
  type ReworkChain,
  type ReworkLink,
  type ReworkSection,
} from '../../review';
import type { Reader } from '../reader';
import { parsed, type Names, type PlaceRow } from './names';
import { rowsAsked, type Asked } from './narrow';

const columns = ['bay', 'procedure', 'revision', 'step', 'role'] as const;
const asked = (what: Asked) => rowsAsked('review_reworks', what, columns);

const followedSchema = z.enum(['doneAgain', 'leftOut', 'reopenedAgain', 'stillOpen']);

interface Spent {
  readonly followed: string;
  readonly spent_before_ms: number;
  readonly spent_after_ms: number | null;
}

const minutesOf = ({ spent_before_ms, spent_after_ms }: Spent): { readonly minutes?: number } =>
  spent_after_ms === null ? {} : { minutes: (spent_after_ms - spent_before_ms) / 60_000 };

interface Row extends PlaceRow, Spent {
  readonly actor: string;
  readonly role: string;
  readonly facts: string;
}

const linkOf = (row: Row, names: Names): ReworkLink => {
  const { why, sentBack, steps } = parsed(reworkFactsSchema, row.facts);
  return {
    seq: row.seq,
    at: new Date(row.at_ms).toISOString(),
    by: names.who(row.actor, row.role),
    why: whyOf(why),
    ...(sentBack === undefined ? {} : { sentBack }),
    steps,
    followed: followedSchema.parse(row.followed),
    ...minutesOf(row),
  };
};

/** The newest chains, each with all its links, also with those before the days that were asked for. */
const chains = async (db: Reader, what: Asked, names: Names): Promise<readonly ReworkChain[]> => {
  const { rows } = await sql<Row>`
    select * from review_reworks where (job, step) in
      (select row.job, row.step ${asked(what)} order by row.at_ms desc limit ${mostRows})
    order by at_ms desc, seq desc`.execute(db);
  const byStep = new Map<string, Row[]>();
  for (const row of rows) {
    const key = `${row.job} ${row.step}`;
    const chain = byStep.get(key);
    if (chain === undefined) byStep.set(key, [row]);
    else chain.unshift(row);
  }
  return Promise.all(
    [...byStep.values()].map(async (chain) => {
      const last = chain.at(-1);
      if (last === undefined) throw new Error('a chain has a link');
      return { ...(await names.place(last)), links: chain.map((row) => linkOf(row, names)) };
    }),
  );
};

/** What was done again, how often, why, and what came of it. */
export const reworkSection = async (
  db: Reader,
  what: Asked,
  names: Names,
): Promise<ReworkSection> => {
  const { rows } = await sql<Spent & { procedure: string; step: string; job: string }>`
    select row.procedure, row.step, row.job, row.followed, row.spent_before_ms,
      row.spent_after_ms ${asked(what)}`.execute(db);
  const reopenings = rows.map((row): Reopening => ({
    procedure: row.procedure,
    step: row.step,
    job: row.job,
    followed: followedSchema.parse(row.followed),
    ...minutesOf(row),
  }));
  return {
    total: rows.length,
    bySteps: await Promise.all(
      reworkSteps(reopenings).map(async (one) => ({
        ...one,
        ...(await names.step(one.procedure, one.step)),
      })),
    ),
    chains: await chains(db, what, names),
  };
};
