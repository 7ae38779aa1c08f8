import { quantile } from '../statistics';
import type { HoldReasonRow } from './sections';

/** Reasons that have a row of their own; what is left is counted under ''. */
const mostReasons = 12;

interface Hold {
  readonly reason: string;
  /** Absent while it lasts. */
  readonly minutes?: number;
}

const median = (values: readonly number[]): number | undefined => {
  const found = quantile(values, 0.5);
  return found.ok ? found.value : undefined;
};

const rowOf = (reason: string, holds: readonly Hold[]): HoldReasonRow => {
  const ended = holds.flatMap(({ minutes }) => (minutes === undefined ? [] : [minutes]));
  const medianMinutes = median(ended);
  return {
    reason,
    count: holds.length,
    running: holds.length - ended.length,
    totalMinutes: ended.reduce((sum, minutes) => sum + minutes, 0),
    ...(medianMinutes === undefined
      ? {}
      : { medianMinutes, longestMinutes: ended.reduce((a, b) => Math.max(a, b), 0) }),
  };
};

/** Holds by their reason, whatever its capitals and spaces, the longest in all first. */
export const holdReasons = (holds: readonly Hold[]): readonly HoldReasonRow[] => {
  const groups = new Map<string, Hold[]>();
  for (const hold of holds) {
    const key = hold.reason.trim().toLowerCase().replaceAll(/\s+/g, ' ');
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [hold]);
    else group.push(hold);
  }
  const byCount = [...groups].sort(([a, many], [b, more]) =>
    a === '' ? 1 : b === '' ? -1 : more.length - many.length || (a < b ? -1 : 1),
  );
  const named = byCount.filter(([key]) => key !== '').slice(0, mostReasons);
  const rest = byCount.filter((group) => !named.includes(group)).flatMap(([, group]) => group);
  return [
    ...named.map(([, group]) => rowOf(group[0]?.reason.trim() ?? '', group)),
    ...(rest.length === 0 ? [] : [rowOf('', rest)]),
  ].sort((a, b) => b.totalMinutes - a.totalMinutes || b.count - a.count);
};
