import { ok, type Result } from '../result';
import { refuse, type StatisticsError } from './error';

export interface ParetoBar {
  readonly name: string;
  readonly count: number;
  /** Of all, 0–1. */
  readonly share: number;
  /** This one and all before it, 0–1. */
  readonly cumulative: number;
}

/**
 * Counts by name, the largest first, equal ones by name; the same name several times is added up.
 * Error: a count that is no number or below zero.
 */
export const pareto = (
  counts: Iterable<readonly [name: string, count: number]>,
): Result<readonly ParetoBar[], StatisticsError> => {
  const totals = new Map<string, number>();
  let total = 0;
  for (const [name, count] of counts) {
    if (!Number.isFinite(count) || count < 0) {
      return refuse('notANumber', `"${name}" has no count.`);
    }
    totals.set(name, (totals.get(name) ?? 0) + count);
    total += count;
  }
  if (!Number.isFinite(total)) return refuse('outOfDomain', 'The counts are too large.');
  let before = 0;
  return ok(
    [...totals]
      .sort(([a, many], [b, more]) => more - many || (a < b ? -1 : 1))
      .map(([name, count]) => {
        before += count;
        const of = (part: number): number => (total === 0 ? 0 : Math.min(1, part / total));
        return { name, count, share: of(count), cumulative: of(before) };
      }),
  );
};
