import type { CompiledQuery, QueryResult } from 'kysely';
import type { Reader } from './reader';

/** Larger ones come seldom, and in many sizes: they are built each time. */
const mostKept = 200;

/**
 * A query that is written often, built and compiled once for each database and each `count` (of rows, or of values in
 * a list). `build` is given the database and the count and may put anything in the place of the values; they are taken
 * from `parameters`, in the order in which they stand in the text.
 */
export const compiledOnce = <Row>(
  build: (db: Reader, count: number) => { compile(): CompiledQuery<Row> },
): ((db: Reader, count: number, parameters: readonly unknown[]) => Promise<QueryResult<Row>>) => {
  // A database and its transactions share one adapter.
  const byDatabase = new WeakMap<object, Map<number, CompiledQuery<Row>>>();
  const compiled = (db: Reader, count: number): CompiledQuery<Row> => {
    const { adapter } = db.getExecutor();
    const byCount = byDatabase.get(adapter) ?? new Map<number, CompiledQuery<Row>>();
    byDatabase.set(adapter, byCount);
    const query = byCount.get(count) ?? build(db, count).compile();
    if (count <= mostKept) byCount.set(count, query);
    return query;
  };
  return (db, count, parameters) => {
    const query = compiled(db, count);
    if (parameters.length !== query.parameters.length)
      throw new Error(`${parameters.length} values for ${query.parameters.length} places`);
    return db.executeQuery({ ...query, parameters });
  };
};
