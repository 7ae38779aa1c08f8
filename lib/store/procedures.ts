import { checkRevision, revisionSchema, type Revision } from '../procedure';
import { canonicalJson } from './canonical-json';
import type { Store } from './open';
import type { Reader } from './reader';
import { openMarks } from './review/open-marks';

/** A published revision as lists show it. */
export interface ProcedureEntry {
  readonly procedure: string;
  readonly revision: number;
  readonly title: string;
  readonly summary: string;
  readonly appliesTo: string;
  /** How many decisions of a foreman that it wants changing wait for its writer; absent: none. */
  readonly changesAsked?: number;
}

/**
 * Publishes a revision. One that is there already is never changed: the same again does nothing, another throws, and
 * so does one with faults.
 */
export const publishRevision = async (db: Reader, revision: Revision): Promise<void> => {
  const content = canonicalJson(revision);
  const there = await db
    .selectFrom('procedure_revisions')
    .select('content')
    .where('procedure', '=', revision.procedure)
    .where('revision', '=', revision.revision)
    .executeTakeFirst();
  if (there?.content === content) return;
  const { faults } = checkRevision(revision);
  if (faults.length > 0) {
    const why = faults.map(({ where, message }) => `${where}: ${message}`).join(' ');
    throw new Error(`“${revision.title}” cannot be published. ${why}`);
  }
  await db
    .insertInto('procedure_revisions')
    .values({
      procedure: revision.procedure,
      revision: revision.revision,
      title: revision.title,
      published_at: revision.publishedAt,
      content,
    })
    .execute();
};

/** A published revision, if there is one of that number. */
export const readRevision = async (
  db: Reader,
  procedure: string,
  revision: number,
): Promise<Revision | undefined> => {
  const row = await db
    .selectFrom('procedure_revisions')
    .select('content')
    .where('procedure', '=', procedure)
    .where('revision', '=', revision)
    .executeTakeFirst();
  return row === undefined ? undefined : revisionSchema.parse(JSON.parse(row.content));
};

/** The newest revision of each procedure, by title. */
export const newestRevisions = async ({ db }: Store): Promise<readonly Revision[]> => {
  const rows = await db
    .selectFrom('procedure_revisions')
    .select('content')
    .where((where) =>
      where(
        'revision',
        '=',
        where
          .selectFrom('procedure_revisions as other')
          .select((other) => other.fn.max('other.revision').as('newest'))
          .whereRef('other.procedure', '=', 'procedure_revisions.procedure'),
      ),
    )
    .orderBy('title')
    .execute();
  return rows.map((row) => revisionSchema.parse(JSON.parse(row.content)));
};

/** The newest revision of each procedure as lists show it, by title. */
export const listProcedures = async (store: Store): Promise<readonly ProcedureEntry[]> => {
  const marks = await openMarks(store.db);
  return (await newestRevisions(store)).map((sheet) => {
    const { procedure, revision, title, summary, appliesTo } = sheet;
    const changesAsked = marks.get(procedure);
    return {
      procedure,
      revision,
      title,
      summary,
      appliesTo,
      ...(changesAsked === undefined ? {} : { changesAsked }),
    };
  });
};
