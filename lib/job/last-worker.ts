import type { JobState } from './state';

/**
 * Who has the job in hand: whoever took the last reading, answered or finished a step last, unless a foreman has given
 * it to somebody since; before anything was done, who opened it.
 */
export const lastWorker = (state: JobState): string => {
  let last = { seq: 0, by: state.openedBy };
  const see = (seq: number, by: string): void => {
    if (seq > last.seq) last = { seq, by };
  };
  for (const { seq, actor } of state.readings) see(seq, actor);
  for (const { seq, actor } of state.answers) see(seq, actor);
  for (const { seq, by } of state.deviations) see(seq, by);
  for (const { settledSeq, doneBy } of Object.values(state.steps))
    if (settledSeq !== undefined && doneBy !== undefined) see(settledSeq, doneBy);
  if (state.assigned !== undefined) see(state.assigned.seq, state.assigned.mechanic);
  return last.by;
};
