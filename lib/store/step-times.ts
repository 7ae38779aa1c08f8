import { spentMs, type JobState } from '../job';
import { rebuildState } from './job-records';
import type { Store } from './open';

/** Minutes that a job's done steps took, by step. */
export const stepMinutes = (state: JobState): Readonly<Record<string, number>> =>
  Object.fromEntries(
    Object.entries(state.steps)
      .filter(([, { status }]) => status === 'done')
      .map(([id]) => [id, spentMs(state, id, state.lastAt) / 60_000]),
  );

/** The same of the last jobs that were closed on one revision, newest first. */
export const earlierStepMinutes = async (
  { db }: Store,
  procedure: string,
  revision: number,
  most: number,
): Promise<readonly Readonly<Record<string, number>>[]> => {
  const rows = await db
    .selectFrom('jobs')
    .select('id')
    .where('procedure', '=', procedure)
    .where('revision', '=', revision)
    .where('phase', '=', 'closed')
    .orderBy('closed_at', 'desc')
    .limit(most)
    .execute();
  const found: Readonly<Record<string, number>>[] = [];
  for (const { id } of rows) found.push(stepMinutes(await rebuildState(db, id)));
  return found;
};
