import { change, lookup } from './record';
import type { JobState } from './state';

/** From one instant to another, ms; the clock of a device may jump back, time spent never does. */
const elapsedMs = (since: string, now: string): number =>
  Math.max(0, Date.parse(now) - Date.parse(since));

/** Adds the running time to the step on the screen and stops the clock. */
export const stopClock = (state: JobState, now: string): JobState => {
  const { clockSince, ...stopped } = state;
  if (clockSince === undefined) return state;
  const steps = change(state.steps, state.currentStep, (step) => ({
    ...step,
    spentMs: step.spentMs + elapsedMs(clockSince, now),
  }));
  return { ...stopped, steps };
};

/** Time on the screen of a step up to `now` (RFC 3339), ms, without holds. 0 for an unknown step. */
export const spentMs = (state: JobState, stepId: string, now: string): number => {
  const before = lookup(state.steps, stepId)?.spentMs ?? 0;
  const running = state.currentStep === stepId && state.clockSince !== undefined;
  return running ? before + elapsedMs(state.clockSince, now) : before;
};
