import Link from 'next/link';
import type { ShownRow } from '@/lib/timeline';
import { Glyph } from '../design/glyph';
import { EventRow } from './event-row';

/** Rows of one day after another. */
const byDay = (rows: readonly ShownRow[]) => {
  const days: { day: string; rows: ShownRow[] }[] = [];
  for (const row of rows) {
    const last = days.at(-1);
    if (last?.day === row.day) last.rows.push(row);
    else days.push({ day: row.day, rows: [row] });
  }
  return days;
};

const pageLink = 'flex min-h-glove items-center gap-3 underline';

/** The events that match, a page of them, each with the way to its moment. */
export function EventList({
  rows,
  at,
  matching,
  before,
  of,
  addressOf,
  earlier,
  later,
}: {
  readonly rows: readonly ShownRow[];
  readonly at: number;
  readonly matching: number;
  readonly before: number;
  readonly of: number;
  readonly addressOf: (seq: number) => string;
  readonly earlier: number | undefined;
  readonly later: number | undefined;
}) {
  const all = matching === of ? `${of} events` : `${matching} that match, of ${of} events`;
  const shown =
    rows.length === matching ? all : `${before + 1} to ${before + rows.length} of ${all}`;
  return (
    <section aria-labelledby="events" className="min-w-0">
      <h2 id="events" className="text-glance font-bold">
        What happened
      </h2>
      <p>{matching === 0 ? 'No event matches.' : shown}</p>
      {earlier === undefined ? null : (
        <Link href={addressOf(earlier)} className={pageLink}>
          <Glyph name="back" /> Events before these
        </Link>
      )}
      {byDay(rows).map(({ day, rows: ofDay }, index) => (
        <section key={`${day} ${index}`} aria-label={day}>
          <h3 className="mt-3 border-b-2 border-edge font-bold">{day}</h3>
          <ol>
            {ofDay.map((row) => (
              <EventRow
                key={row.seq}
                row={row}
                now={row.seq === at}
                link={
                  <Link
                    href={addressOf(row.seq)}
                    scroll={false}
                    prefetch={false}
                    aria-current={row.seq === at ? 'true' : undefined}
                    className="inline-flex min-h-[24px] min-w-[44px] items-center underline"
                  >
                    <span className="sr-only">As it stood after event </span>
                    {row.seq}
                  </Link>
                }
              />
            ))}
          </ol>
        </section>
      ))}
      {later === undefined ? null : (
        <Link href={addressOf(later)} className={pageLink}>
          Events after these <Glyph name="forward" />
        </Link>
      )}
    </section>
  );
}
