import { sql, type RawBuilder } from 'kysely';
import type { ReviewFilter, Span } from '../../review';

/** A filter with its days and its shift on the world's clock. */
export interface Asked {
  readonly filter: ReviewFilter;
  readonly spans: readonly Span[];
}

type Column = 'bay' | 'procedure' | 'revision' | 'step' | 'ask' | 'fastener' | 'role';

/** `from` of a table by name: its rows of the spans, found by its column of time, and narrowed by those columns. */
export const rowsAsked = (
  table: string,
  { filter, spans }: Asked,
  columns: readonly Column[],
  time = 'at_ms',
): RawBuilder<unknown> => {
  const at = sql.ref(`row.${time}`);
  const narrowed = columns.flatMap((column) => {
    const value = filter[column];
    return value === undefined ? [] : [sql`and ${sql.ref(`row.${column}`)} = ${value}`];
  });
  const [first, ...more] = spans;
  const rest = sql.join(narrowed, sql` `);
  if (first === undefined) return sql`from ${sql.table(table)} as row where false`;
  if (more.length === 0)
    return sql`from ${sql.table(table)} as row
      where ${at} >= ${first.fromMs} and ${at} < ${first.toMs} ${rest}`;
  // One text whatever the number of spans, so that the statement stays prepared.
  const all = JSON.stringify(spans.map(({ fromMs, toMs }) => [fromMs, toMs]));
  // A cross join is done in the order in which it is written: for each span, its rows by the index.
  return sql`from json_each(${all}) as span cross join ${sql.table(table)} as row
    where ${at} >= (span.value ->> 0) and ${at} < (span.value ->> 1) ${rest}`;
};
