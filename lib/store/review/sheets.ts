import type { Revision } from '../../procedure';
import { readRevision } from '../procedures';
import type { Reader } from '../reader';

/** Published revisions never change: each is read and checked once in a process. */
const read = new WeakMap<object, Map<string, Promise<Revision | undefined>>>();

/** A published revision, if there is one of that number. */
export const sheetOf = (
  db: Reader,
  procedure: string,
  revision: number,
): Promise<Revision | undefined> => {
  const sheets = read.get(db) ?? new Map<string, Promise<Revision | undefined>>();
  read.set(db, sheets);
  const key = `${procedure} ${String(revision)}`;
  const there = sheets.get(key);
  if (there !== undefined) return there;
  const sheet = readRevision(db, procedure, revision);
  sheets.set(key, sheet);
  // One that is not there yet may be published later.
  sheet.then(
    (found) => {
      if (found === undefined) sheets.delete(key);
    },
    () => {
      sheets.delete(key);
    },
  );
  return sheet;
};

/** The newest revision of a procedure. */
export const newestSheet = async (db: Reader, procedure: string): Promise<Revision | undefined> => {
  const newest = await db
    .selectFrom('procedure_revisions')
    .select('revision')
    .where('procedure', '=', procedure)
    .orderBy('revision', 'desc')
    .limit(1)
    .executeTakeFirst();
  return newest === undefined ? undefined : sheetOf(db, procedure, newest.revision);
};

/** The newest revision of each procedure, by its id. */
export const newestSheets = async (db: Reader): Promise<readonly Revision[]> => {
  const rows = await db
    .selectFrom('procedure_revisions')
    .select(['procedure', (row) => row.fn.max('revision').as('newest')])
    .groupBy('procedure')
    .orderBy('procedure')
    .execute();
  const sheets = await Promise.all(
    rows.map(({ procedure, newest }) => sheetOf(db, procedure, newest)),
  );
  return sheets.filter((sheet) => sheet !== undefined);
};
