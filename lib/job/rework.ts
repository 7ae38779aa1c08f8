import { ok, type Result } from '../result';
import { dependents, stepOf } from '../procedure';
import { stands } from './asks';
import type { Happening, JobEvent } from './event';
import { withVolumes } from './fluids';
import { change, lookup } from './record';
import { refuse } from './refuse';
import { chosenIn, marked } from './standing';
import type { Answer, JobState, Reading, Refusal, StepState } from './state';
import { undoEffect } from './undo';

type Happened<T extends Happening['type']> = Extract<Happening, { type: T }>;

const openAgain = (old: StepState, seq: number): StepState => ({
  status: 'open',
  ready: false,
  spentMs: old.spentMs,
  reopened: old.reopened + 1,
  openedSeq: seq,
});

/** Rework: the step and all done steps that follow from it are open again, the last done undone first. */
export const stepReopened = (
  state: JobState,
  event: JobEvent,
  happening: Happened<'stepReopened'>,
): Result<JobState, Refusal> => {
  const old = lookup(state.steps, happening.step);
  if (old === undefined)
    return refuse('unknownStep', 'The procedure has no such step: choose one from the list.');
  if (old.status === 'open')
    return refuse('stepNotDone', 'The step is open already: go on with it.');
  const settledSeq = (id: string): number => lookup(state.steps, id)?.settledSeq ?? 0;
  const reopened = [
    happening.step,
    ...dependents(state.revision, happening.step).filter(
      (id) => lookup(state.steps, id)?.status === 'done',
    ),
  ].sort((a, b) => settledSeq(b) - settledSeq(a));
  const undone = reopened
    .filter((id) => lookup(state.steps, id)?.status === 'done')
    .map((id) => stepOf(state.revision, id))
    .filter((step) => step !== undefined);
  const things = undone.reduce(
    (now, step) =>
      step.effects.reduceRight(
        (next, effect) => undoEffect(state.revision, next, effect, chosenIn(state, step)),
        now,
      ),
    { parts: state.parts, fasteners: state.fasteners, fluids: state.fluids, kit: state.kit },
  );
  const superseded = (entry: Reading | Answer) => reopened.includes(entry.step) && stands(entry);
  return ok(
    withVolumes({
      ...state,
      ...things,
      readings: marked(state.readings, superseded, 'superseded'),
      answers: marked(state.answers, superseded, 'superseded'),
      steps: reopened.reduce(
        (steps, id) => change(steps, id, (step) => openAgain(step, event.seq)),
        state.steps,
      ),
      deviations: [
        ...state.deviations,
        {
          id: event.id,
          seq: event.seq,
          kind: 'rework',
          step: happening.step,
          reason: happening.reason,
          by: event.actor,
          at: event.at,
        },
      ],
    }),
  );
};
