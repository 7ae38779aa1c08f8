import { nextStep, type Happening } from '../job';
import { unsigned } from '../ledger';
import { stepNumber, stepOf, type Step } from '../procedure';
import type { JobState } from '../job/state';
import { happen, happenAndShow, refuse, show } from './happen';
import type { KioskEnv, KioskState, KioskStep, Via } from './state';
import { currentStep, openWants, wantLabel } from './wanted';

const settled = (job: JobState, step: string): boolean => job.steps[step]?.status !== 'open';

/** The step to go on with, if one is left that may be begun. */
export const nextDoable = (job: JobState): Step | undefined => {
  const id = nextStep(job);
  return id === undefined ? undefined : stepOf(job.revision, id);
};

export const openEndsText = (job: JobState): string => {
  const count = unsigned(job).length;
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
    const next = nextDoable(state.job);
    return next === undefined
      ? show({ ...state, view: 'ledger' }, via, { tone: 'plain', text: openEndsText(state.job) })
      : begun(state, next, [], via, env, `Step ${stepNumber(state.job.revision, next.id)}`);
  }
  const first = openWants(state.job, step)[0];
  if (first !== undefined)
    return refuse(state, via, `Still wanted: ${wantLabel(state.job, first)}`);
  const done = happen(state, [{ type: 'stepDone', step: step.id }], { via }, env);
  if (!done.ok) return refuse(state, via, done.message);
  const next = nextDoable(done.state.job);
  if (next !== undefined)
    return begun(
      state,
      next,
      [{ type: 'stepDone', step: step.id }],
      via,
      env,
      `Step ${stepNumber(state.job.revision, step.id)} done`,
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
    : begun(state, before, [], via, env, `Step ${stepNumber(state.job.revision, before.id)}`);
};

export const goToStep = (state: KioskState, number: number, via: Via, env: KioskEnv): KioskStep => {
  const step = state.job.revision.steps[number - 1];
  return step === undefined
    ? refuse(state, via, `There is no step ${number}`)
    : begun(state, step, [], via, env, `Step ${number}`);
};
