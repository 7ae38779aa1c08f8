import type { Reader } from '../reader';

/** How many decisions wait for each sheet's writer, by procedure; those that a newer revision answers do not. */
export const openMarks = async (db: Reader): Promise<ReadonlyMap<string, number>> => {
  const rows = await db
    .selectFrom('sheet_marks')
    .select(['procedure', (row) => row.fn.countAll<number>().as('count')])
    .where('done_at', 'is', null)
    .where((where) =>
      where.not(
        where.exists(
          where
            .selectFrom('procedure_revisions as newer')
            .select('newer.revision')
            .whereRef('newer.procedure', '=', 'sheet_marks.procedure')
            .whereRef('newer.revision', '>', 'sheet_marks.revision'),
        ),
      ),
    )
    .groupBy('procedure')
    .execute();
  return new Map(rows.map(({ procedure, count }) => [procedure, count]));
};
