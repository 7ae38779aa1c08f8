import { stepOf } from '../../procedure';
import { err, ok, type Result } from '../../result';
import type { SheetMark } from '../../review';
import type { Store } from '../open';
import type { Reader } from '../reader';
import type { Names } from './names';
import { newestSheet, sheetOf } from './sheets';
import type { ReviewTables } from './tables';

/** A decision that a sheet wants changing, before it has an id. */
export interface NewSheetMark {
  readonly procedure: string;
  readonly revision: number;
  readonly step?: string | undefined;
  readonly note: string;
  /** What showed it. */
  readonly seen?: { readonly job: string; readonly seq: number } | undefined;
}

const toMark = async (
  db: Reader,
  row: ReviewTables['sheet_marks'],
  names: Names,
): Promise<SheetMark> => {
  const sheet = await sheetOf(db, row.procedure, row.revision);
  const newest = await newestSheet(db, row.procedure);
  const replaced = newest !== undefined && newest.revision > row.revision ? newest : undefined;
  const done: SheetMark['done'] =
    row.done_at !== null
      ? {
          ...(row.done_by === null ? {} : { by: await whoOf(db, row.done_by, names) }),
          at: row.done_at,
        }
      : replaced === undefined
        ? undefined
        : { at: replaced.publishedAt, revision: replaced.revision };
  return {
    id: row.id,
    procedure: row.procedure,
    revision: row.revision,
    title: sheet?.title ?? row.procedure,
    ...(row.step === null
      ? {}
      : { step: row.step, stepTitle: (sheet && stepOf(sheet, row.step)?.title) ?? row.step }),
    note: row.note,
    by: await whoOf(db, row.marked_by, names),
    at: row.marked_at,
    ...(row.seen_job === null || row.seen_seq === null
      ? {}
      : { seen: { job: row.seen_job, seq: row.seen_seq } }),
    ...(done === undefined ? {} : { done }),
  };
};

const whoOf = async (db: Reader, person: string, names: Names): Promise<SheetMark['by']> => {
  const row = await db
    .selectFrom('people')
    .select('role')
    .where('id', '=', person)
    .executeTakeFirst();
  return names.who(person, row?.role ?? 'foreman');
};

/** Newest first; all, of one procedure, or of one of its revisions. */
export const sheetMarks = async (
  db: Reader,
  names: Names,
  procedure?: string,
  revision?: number,
): Promise<readonly SheetMark[]> => {
  let query = db.selectFrom('sheet_marks').selectAll();
  if (procedure !== undefined) query = query.where('procedure', '=', procedure);
  if (revision !== undefined) query = query.where('revision', '=', revision);
  const rows = await query.orderBy('marked_at', 'desc').orderBy('id').execute();
  return Promise.all(rows.map((row) => toMark(db, row, names)));
};

/** Why a mark was not kept. */
export type MarkFault =
  'unknownRevision' | 'unknownStep' | 'unknownJob' | 'unknownMark' | 'doneAlready';

/** Keeps a foreman's decision for the sheet's writer. */
export const markSheet = async (
  { db }: Store,
  mark: NewSheetMark,
  { id, by, at }: { readonly id: string; readonly by: string; readonly at: string },
): Promise<Result<undefined, MarkFault>> => {
  const sheet = await sheetOf(db, mark.procedure, mark.revision);
  if (sheet === undefined) return err('unknownRevision');
  if (mark.step !== undefined && stepOf(sheet, mark.step) === undefined) return err('unknownStep');
  const { seen } = mark;
  const job =
    seen === undefined
      ? undefined
      : await db.selectFrom('jobs').select('seq').where('id', '=', seen.job).executeTakeFirst();
  if (seen !== undefined && (job === undefined || seen.seq > job.seq)) return err('unknownJob');
  await db
    .insertInto('sheet_marks')
    .values({
      id,
      procedure: mark.procedure,
      revision: mark.revision,
      step: mark.step ?? null,
      note: mark.note,
      seen_job: seen?.job ?? null,
      seen_seq: seen?.seq ?? null,
      marked_by: by,
      marked_at: at,
      done_by: null,
      done_at: null,
    })
    .execute();
  return ok(undefined);
};

/** Somebody has dealt with it; once done it stays so. */
export const closeMark = async (
  { db }: Store,
  id: string,
  { by, at }: { readonly by: string; readonly at: string },
): Promise<Result<undefined, MarkFault>> => {
  const changed = await db
    .updateTable('sheet_marks')
    .set({ done_by: by, done_at: at })
    .where('id', '=', id)
    .where('done_at', 'is', null)
    .executeTakeFirst();
  if (changed.numUpdatedRows > 0n) return ok(undefined);
  const there = await db
    .selectFrom('sheet_marks')
    .select('id')
    .where('id', '=', id)
    .executeTakeFirst();
  return err(there === undefined ? 'unknownMark' : 'doneAlready');
};
