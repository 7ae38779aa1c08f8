import { ok, type Result } from '../result';
import { dependents, partOf, stepOf, type Ask, type Step } from '../procedure';
import { stands } from './asks';
import { stopClock } from './clock';
import { applyEffect, type Fitted, type Things } from './effects';
import type { Happening, JobEvent } from './event';
import { withVolumes } from './fluids';
import { canBegin, canDo } from './may-do';
import { change, lookup } from './record';
import { refuse } from './refuse';
import type {
  Answer,
  Deviation,
  EntryStatus,
  JobState,
  Reading,
  Refusal,
  StepState,
} from './state';
import { undoEffect } from './undo';

type Happened<T extends Happening['type']> = Extract<Happening, { type: T }>;

const unknownStep = () =>
  refuse('unknownStep', 'The procedure has no such step: choose one from the list.');

/** Another step comes on the screen; the time of the one before stops. */
export const stepBegun = (
  state: JobState,
  event: JobEvent,
  happening: Happened<'stepBegun'>,
): Result<JobState, Refusal> =>
  stepOf(state.revision, happening.step) === undefined
    ? unknownStep()
    : ok({
        ...stopClock(state, event.at),
        currentStep: happening.step,
        clockSince: event.at,
      });

const notCurrent = () =>
  refuse('stepNotCurrent', 'Another step is on the screen: go to the step first.');

/** "Ready", before what cannot be undone. */
export const readyGiven = (
  state: JobState,
  happening: Happened<'readyGiven'>,
): Result<JobState, Refusal> => {
  const may = canBegin(state, happening.step);
  if (!may.ok) return may;
  if (state.currentStep !== happening.step) return notCurrent();
  const steps = change(state.steps, happening.step, (step) => ({ ...step, ready: true }));
  return ok({ ...state, steps });
};

const marked = <T extends Reading | Answer>(
  entries: readonly T[],
  which: (entry: T) => boolean,
  status: EntryStatus,
): readonly T[] => entries.map((entry) => (which(entry) ? { ...entry, status } : entry));

/** How parts were chosen in a step: by the answers that stand. Without one, the safe reading is: the same again. */
const chosenIn =
  (state: JobState, step: Step): Fitted =>
  (part) => {
    const asked = step.asks.find((ask) => ask.kind === 'choice' && ask.part === part);
    const given = state.answers.find(
      (answer) => answer.step === step.id && answer.ask === asked?.id && stands(answer),
    );
    return given?.answer.kind === 'choice' && given.answer.option === 'replaced' ? 'new' : 'reused';
  };

const againstSheet = (state: JobState, ask: Ask | undefined, answer: Answer): boolean =>
  ask?.kind === 'choice' &&
  answer.answer.kind === 'choice' &&
  answer.answer.option === 'reused' &&
  partOf(state.revision, ask.part)?.reuse === 'never';

/** The deviations that the entries of a step make as it is done. */
const arising = (state: JobState, event: JobEvent, step: Step): readonly Deviation[] => {
  const common = { seq: event.seq, step: step.id, by: event.actor, at: event.at };
  const ofStep = (entry: Reading | Answer) =>
    entry.step === step.id && entry.status === 'provisional';
  const outOfSpec = state.readings
    .filter((reading) => ofStep(reading) && reading.verdict === 'outOfSpec')
    .map((reading): Deviation => ({
      ...common,
      id: `outOfSpec:${reading.id}`,
      kind: 'outOfSpec',
      reading: reading.id,
      ...(reading.fastener === undefined ? {} : { fastener: reading.fastener }),
    }));
  const reused = state.answers.filter(ofStep).flatMap((answer): Deviation[] => {
    const ask = step.asks.find(({ id }) => id === answer.ask);
    if (!againstSheet(state, ask, answer)) return [];
    return [
      {
        ...common,
        id: `reusedAgainstSheet:${answer.id}`,
        kind: 'reusedAgainstSheet',
        ...(ask?.kind === 'choice' ? { part: ask.part } : {}),
        ...(answer.answer.kind === 'choice' && answer.answer.reason !== undefined
          ? { reason: answer.answer.reason }
          : {}),
      },
    ];
  });
  return [...outOfSpec, ...reused];
};

/** The step is done: its entries count and its effects are on the vehicle. */
export const stepDone = (
  state: JobState,
  event: JobEvent,
  happening: Happened<'stepDone'>,
): Result<JobState, Refusal> => {
  const may = canDo(state, happening.step);
  if (!may.ok) return may;
  if (state.currentStep !== happening.step) return notCurrent();
  const step = may.value;
  const counts = (entry: Reading | Answer) =>
    entry.step === step.id && entry.status === 'provisional';
  const things = step.effects.reduce<Things>(
    (now, effect) => applyEffect(state.revision, now, effect, chosenIn(state, step)),
    state,
  );
  return ok(
    withVolumes({
      ...state,
      parts: things.parts,
      fasteners: things.fasteners,
      fluids: things.fluids,
      kit: things.kit,
      readings: marked(state.readings, counts, 'counted'),
      answers: marked(state.answers, counts, 'counted'),
      deviations: [...state.deviations, ...arising(state, event, step)],
      steps: change(state.steps, step.id, (old) => ({
        ...old,
        status: 'done',
        settledSeq: event.seq,
        doneAt: event.at,
        doneBy: event.actor,
      })),
    }),
  );
};

/** The step is left out, for a reason: what it would have done is not done, what was entered does not count. */
export const stepLeftOut = (
  state: JobState,
  event: JobEvent,
  happening: Happened<'stepLeftOut'>,
): Result<JobState, Refusal> => {
  const old = lookup(state.steps, happening.step);
  if (old === undefined) return unknownStep();
  if (old.status !== 'open')
    return refuse('stepNotOpen', 'The step is not open: only an open step can be left out.');
  const dropped = (entry: Reading | Answer) =>
    entry.step === happening.step && entry.status === 'provisional';
  return ok({
    ...state,
    readings: marked(state.readings, dropped, 'superseded'),
    answers: marked(state.answers, dropped, 'superseded'),
    steps: change(state.steps, happening.step, (step) => ({
      ...step,
      status: 'leftOut',
      settledSeq: event.seq,
    })),
    deviations: [
      ...state.deviations,
      {
        id: event.id,
        seq: event.seq,
        kind: 'leftOut',
        step: happening.step,
        reason: happening.reason,
        by: event.actor,
        at: event.at,
      },
    ],
  });
};

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
  if (old === undefined) return unknownStep();
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
    .map((id) => stepOf(state.revision, id))
    .filter((step) => step !== undefined)
    .filter((step) => lookup(state.steps, step.id)?.status === 'done');
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
