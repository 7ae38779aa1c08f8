import type { Happening } from '../job';
import { looseEnds } from '../ledger';
import type { Step } from '../procedure';
import type { JobState } from '../job/state';
import { happen, happenAndShow, refuse, show } from './happen';
import type { KioskEnv, KioskState, KioskStep, Via } from './state';
import { currentStep, openWants, wantLabel } from './wanted';

const settled = (job: JobState, step: string): boolean => job.steps[step]?.status !== 'open';

/** May be begun now: open, and every step it comes after is done or left out. */
export const isDoable = (job: JobState, step: Step): boolean =>
  !settled(job, step.id) && step.after.every((before) => settled(job, before));

/** The step to go on with: the next doable one in the sheet's order, else the first doable one. */
export const nextDoable = (job: JobState, from: string): Step | undefined => {
  const { steps } = job.revision;
  const here = steps.findIndex(({ id }) => id === from);
  return [...steps.slice(here + 1), ...steps.slice(0, here + 1)].find((step) =>
    isDoable(job, step),
  );
};

export const stepNumber = (job: JobState, step: string): number =>
  job.revision.steps.findIndex(({ id }) => id === step) + 1;

export const openEndsText = (job: JobState): string => {
  const count = looseEnds(job).filter((end) => end.signedBy === undefined).length;
  if (count === 0) return 'Nothing is left open. Say "close the job"';
  return count === 1 ? '1 loose end is left' : `${count} loose ends are left`;
};

const begun = (
  state: KioskState,
  step: Step,
  happenings: readonly Happening[],
  via: Via,
  env: KioskEnv,
  text: string,
): KioskStep => {
  const { chosen: _gone, ...rest } = state;
  return happenAndShow(
    { ...rest, view: 'step' },
    [...happenings, { type: 'stepBegun', step: step.id }],
    { via },
    env,
    { tone: 'good', text },
    [{ kind: 'say', text: step.title }],
  );
};

/** "Next": the step is done if nothing it asks is missing, and the next one is shown. */
export const goNext = (state: KioskState, via: Via, env: KioskEnv): KioskStep => {
  const step = currentStep(state.job);
  if (settled(state.job, step.id)) {
    const next = nextDoable(state.job, step.id);
    return next === undefined
      ? show({ ...state, view: 'ledger' }, via, { tone: 'plain', text: openEndsText(state.job) })
      : begun(state, next, [], via, env, `Step ${stepNumber(state.job, next.id)}`);
  }
  const first = openWants(state.job, step)[0];
  if (first !== undefined)
    return refuse(state, via, `Still wanted: ${wantLabel(state.job, first)}`);
  const done = happen(state, [{ type: 'stepDone', step: step.id }], { via }, env);
  if (!done.ok) return refuse(state, via, done.message);
  const next = nextDoable(done.state.job, step.id);
  if (next !== undefined)
    return begun(
      state,
      next,
      [{ type: 'stepDone', step: step.id }],
      via,
      env,
      `Step ${stepNumber(state.job, step.id)} done`,
    );
  const text = `All steps are done. ${openEndsText(done.state.job)}`;
  return show({ ...done.state, view: 'ledger' }, via, { tone: 'good', text }, [
    ...done.effects,
    { kind: 'tone', tone: 'done' },
    { kind: 'say', text },
  ]);
};

/** "Back": shows the step before in the sheet's order. Nothing is undone by looking. */
export const goBack = (state: KioskState, via: Via, env: KioskEnv): KioskStep => {
  if (state.view !== 'step') return { state: { ...state, view: 'step' }, effects: [] };
  const { steps } = state.job.revision;
  const before = steps[steps.findIndex(({ id }) => id === state.job.currentStep) - 1];
  return before === undefined
    ? refuse(state, via, 'This is the first step')
    : begun(state, before, [], via, env, `Step ${stepNumber(state.job, before.id)}`);
};

export const goToStep = (state: KioskState, number: number, via: Via, env: KioskEnv): KioskStep => {
  const step = state.job.revision.steps[number - 1];
  return step === undefined
    ? refuse(state, via, `There is no step ${number}`)
    : begun(state, step, [], via, env, `Step ${number}`);
};
