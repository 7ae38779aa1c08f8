import { ok, type Result } from '../result';
import { stepNumber, stepOf, type Step } from '../procedure';
import { openAsks, type OpenAsk } from './asks';
import { lookup } from './record';
import { refuse } from './refuse';
import type { JobState, Refusal } from './state';

/** "step 3 “Fit the cover”" */
export const named = (state: JobState, step: Step): string =>
  `step ${stepNumber(state.revision, step.id)} “${step.title}”`;

/** Whether somebody said why this step comes before its turn, since it was last open. */
const orderExplained = (state: JobState, stepId: string, openedSeq: number): boolean =>
  state.deviations.some((d) => d.kind === 'orderChanged' && d.step === stepId && d.seq > openedSeq);

/** Steps that must be done before this one and are neither done nor left out. */
export const openPrerequisites = (state: JobState, step: Step): readonly Step[] =>
  step.after.flatMap((id) => {
    const before = stepOf(state.revision, id);
    return before && lookup(state.steps, id)?.status === 'open' ? [before] : [];
  });

/** Whether work on a step may start: the job runs, the step is open and what comes before it is done. */
export const canBegin = (state: JobState, stepId: string): Result<Step, Refusal> => {
  const step = stepOf(state.revision, stepId);
  const progress = lookup(state.steps, stepId);
  if (state.phase === 'closed') return refuse('closed', 'The job is closed.');
  if (state.phase === 'held') return refuse('held', 'The job is on hold: resume it first.');
  if (step === undefined || progress === undefined)
    return refuse('unknownStep', 'The procedure has no such step: choose one from the list.');
  if (progress.status !== 'open')
    return refuse('stepNotOpen', 'The step is not open: reopen it to do it again.');
  const [before] = openPrerequisites(state, step);
  if (before !== undefined && !orderExplained(state, stepId, progress.openedSeq))
    return refuse(
      'prerequisiteOpen',
      `First do ${named(state, before)}, or note why the order is changed.`,
    );
  return ok(step);
};

const wanted = ({ ask, fasteners }: OpenAsk): string =>
  fasteners.length === 0
    ? ask.label
    : `${ask.label}: ${fasteners.map((fastener) => fastener.label).join(', ')}`;

/** Whether a step could be called done now if it is on the screen; else why not. */
export const canDo = (state: JobState, stepId: string): Result<Step, Refusal> => {
  const may = canBegin(state, stepId);
  if (!may.ok) return may;
  if (may.value.oneShot && lookup(state.steps, stepId)?.ready !== true)
    return refuse('notReady', 'This cannot be undone: say ready before you start.');
  const [open] = openAsks(state, stepId);
  return open === undefined ? may : refuse('askOpen', `Still wanted – ${wanted(open)}.`);
};

/** The step to go on with: the first after the current one, round the sheet, that may begin; if none, none. */
export const nextStep = (state: JobState): string | undefined => {
  const ids = state.revision.steps.map((step) => step.id);
  const here = ids.indexOf(state.currentStep);
  const round = [...ids.slice(here + 1), ...ids.slice(0, here + 1)];
  return round.find((id) => canBegin(state, id).ok);
};
