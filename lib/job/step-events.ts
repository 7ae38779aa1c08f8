import { ok, type Result } from '../result';
import { partOf, stepOf, type Ask, type Step } from '../procedure';
import { stopClock } from './clock';
import { applyEffect, type Things } from './effects';
import type { Happening, JobEvent } from './event';
import { withVolumes } from './fluids';
import { canBegin, canDo } from './may-do';
import { change, lookup } from './record';
import { refuse } from './refuse';
import { chosenIn, marked } from './standing';
import type { Answer, Deviation, JobState, Reading, Refusal } from './state';

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
