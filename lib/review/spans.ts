import type { Shift } from '../shop';

/** From an instant up to another, ms since 1970 (UTC); the end is not part of it. */
export interface Span {
  readonly fromMs: number;
  readonly toMs: number;
}

const DAY_MS = 86_400_000;

/** The clock of a time zone: what its people read at an instant, as ms of a clock without a zone. */
const clockIn = (timeZone: string): ((ms: number) => number) => {
  const format = new Intl.DateTimeFormat('en-GB', {
    timeZone,
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    second: 'numeric',
  });
  return (ms) => {
    const parts = Object.fromEntries(
      format.formatToParts(ms).map(({ type, value }) => [type, Number(value)]),
    );
    const { year = 0, month = 1, day = 1, hour = 0, minute = 0, second = 0 } = parts;
    return Date.UTC(year, month - 1, day, hour, minute, second);
  };
};

/** The instant at which a clock shows this; in the hour that a clock skips, the one after. */
const instantOf = (clock: (ms: number) => number, shown: number): number => {
  const guess = shown - (clock(shown) - shown);
  return shown - (clock(guess) - guess);
};

const minutesOf = (time: string): number => {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  return hours * 60 + minutes;
};

/** Those that touch or overlap made one. */
const joined = (spans: readonly Span[]): readonly Span[] => {
  const out: Span[] = [];
  for (const span of [...spans].sort((a, b) => a.fromMs - b.fromMs)) {
    const last = out.at(-1);
    if (last === undefined || span.fromMs > last.toMs) out.push(span);
    else out[out.length - 1] = { fromMs: last.fromMs, toMs: Math.max(last.toMs, span.toMs) };
  }
  return out;
};

/**
 * When the days from the first to the last, both inclusive, or one shift of each of them, lie on the world's clock. A
 * shift belongs to the day on which it begins. Right through summer time: the shift of that day is an hour shorter.
 */
export const spansOf = (
  { from, to }: { readonly from: string; readonly to: string },
  shift: Shift | undefined,
  timeZone: string,
): readonly Span[] => {
  const clock = clockIn(timeZone);
  const begins = minutesOf(shift?.from ?? '00:00');
  const ends = minutesOf(shift?.to ?? '24:00');
  const lasts = ends > begins ? ends - begins : ends + 1440 - begins;
  const first = Date.parse(`${from}T00:00:00Z`);
  const last = Date.parse(`${to}T00:00:00Z`);
  if (shift === undefined)
    return [{ fromMs: instantOf(clock, first), toMs: instantOf(clock, last + DAY_MS) }];
  const spans: Span[] = [];
  for (let day = first; day <= last; day += DAY_MS) {
    const shown = day + begins * 60_000;
    spans.push({
      fromMs: instantOf(clock, shown),
      toMs: instantOf(clock, shown + lasts * 60_000),
    });
  }
  return joined(spans);
};

/** The day that it is somewhere: "2026-03-31". */
export const dayIn = (ms: number, timeZone: string): string =>
  new Date(clockIn(timeZone)(ms)).toISOString().slice(0, 10);
