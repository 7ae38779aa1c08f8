import { sql } from 'kysely';
import { z } from 'zod';
import {
  holdReasons,
  mostRows,
  whyOf,
  wordsSchema,
  type HoldRow,
  type HoldSection,
} from '../../review';
import type { Reader } from '../reader';
import { parsed, type Names, type PlaceRow } from './names';
import { rowsAsked, type Asked } from './narrow';

const columns = ['bay', 'procedure', 'revision', 'step', 'role'] as const;
const asked = (what: Asked) => rowsAsked('review_holds', what, columns);

const factsSchema = z.object({ why: wordsSchema });

interface Lasting {
  readonly at_ms: number;
  readonly ended_ms: number | null;
}

/** The clock of a device may jump back; a hold never lasts less than nothing. */
const minutesOf = ({ at_ms, ended_ms }: Lasting): { readonly minutes?: number } =>
  ended_ms === null ? {} : { minutes: Math.max(0, ended_ms - at_ms) / 60_000 };

interface Row extends PlaceRow, Lasting {
  readonly actor: string;
  readonly role: string;
  readonly facts: string;
}

const toRow = async (row: Row, names: Names): Promise<HoldRow> => ({
  ...(await names.place(row)),
  by: names.who(row.actor, row.role),
  why: whyOf(parsed(factsSchema, row.facts).why),
  ...minutesOf(row),
});

/** Why jobs stood still, and for how long. */
export const holdSection = async (db: Reader, what: Asked, names: Names): Promise<HoldSection> => {
  const all = await sql<Lasting & { reason: string }>`
    select row.reason, row.at_ms, row.ended_ms ${asked(what)}`.execute(db);
  const { rows } = await sql<Row>`
    select * from review_holds where rowid in
      (select row.rowid ${asked(what)} order by row.at_ms desc limit ${mostRows})
    order by at_ms desc, seq desc`.execute(db);
  return {
    total: all.rows.length,
    byReason: holdReasons(all.rows.map((row) => ({ reason: row.reason, ...minutesOf(row) }))),
    rows: await Promise.all(rows.map((row) => toRow(row, names))),
  };
};
