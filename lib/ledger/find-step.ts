import { lookup } from '../job/record';
import type { JobState } from '../job/state';
import { stepsThat, type Effect } from '../procedure';

/** The step that settles something: the first still open that does it, else the last that does. */
export const stepFor = (
  state: JobState,
  does: (effect: Effect) => boolean,
): { readonly step?: string } => {
  const all = stepsThat(state.revision, does);
  const step = all.find(({ id }) => lookup(state.steps, id)?.status === 'open') ?? all.at(-1);
  return step === undefined ? {} : { step: step.id };
};

/** Whether a step that does it is done. */
export const wasDone = (state: JobState, does: (effect: Effect) => boolean): boolean =>
  stepsThat(state.revision, does).some(({ id }) => lookup(state.steps, id)?.status === 'done');
