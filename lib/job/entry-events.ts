import { ok, type Result } from '../result';
import { askOf, groupOf, partOf, stepOf, type Ask, type Step, type ValueAsk } from '../procedure';
import { quantityOf } from '../quantity';
import { askSpecification, askedEach } from './asks';
import { atFastener } from './at-fastener';
import type { Happening, JobEvent } from './event';
import { judgeValue } from './judge-value';
import { lookup } from './record';
import { refuse } from './refuse';
import type { Answer, JobState, Reading, Refusal } from './state';

type Happened<T extends Happening['type']> = Extract<Happening, { type: T }>;

const openStep = (state: JobState, stepId: string): Result<Step, Refusal> => {
  const step = stepOf(state.revision, stepId);
  if (step === undefined)
    return refuse('unknownStep', 'The procedure has no such step: choose one from the list.');
  if (lookup(state.steps, stepId)?.status !== 'open')
    return refuse('stepNotOpen', 'The step is not open: reopen it to change what was entered.');
  return state.currentStep === stepId
    ? ok(step)
    : refuse('stepNotCurrent', 'Another step is on the screen: go to the step first.');
};

const openAsk = (
  state: JobState,
  happening: { readonly step: string; readonly ask: string },
): Result<{ readonly step: Step; readonly ask: Ask }, Refusal> => {
  const step = openStep(state, happening.step);
  if (!step.ok) return step;
  const ask = askOf(step.value, happening.ask);
  return ask === undefined
    ? refuse('unknownAsk', 'The step asks for no such thing: answer what is on the screen.')
    : ok({ step: step.value, ask });
};

const checkFastener = (
  state: JobState,
  ask: ValueAsk,
  fastener: string | undefined,
): Result<undefined, Refusal> => {
  const each = askedEach(state.revision, ask);
  if (each.length === 0)
    return fastener === undefined
      ? ok(undefined)
      : refuse('unknownFastener', 'One value is asked here: give it without a number.');
  if (each.some(({ id }) => id === fastener)) return ok(undefined);
  const noun = (ask.of.kind === 'pass' && groupOf(state.revision, ask.of.group)?.noun) || 'bolt';
  return refuse('unknownFastener', `Say which ${noun}: ${each.map((f) => f.label).join(', ')}.`);
};

/** Of what was given for the same thing before, only the last stands. */
const replaced = <T extends Reading | Answer>(entries: readonly T[], by: T): readonly T[] => [
  ...entries.map((old) =>
    old.status === 'provisional' &&
    old.step === by.step &&
    old.ask === by.ask &&
    ('fastener' in old ? old.fastener : undefined) === ('fastener' in by ? by.fastener : undefined)
      ? { ...old, status: 'superseded' as const }
      : old,
  ),
  by,
];

/** A value, judged and shown; it counts once the step is done. */
export const readingTaken = (
  state: JobState,
  event: JobEvent,
  happening: Happened<'readingTaken'>,
): Result<JobState, Refusal> => {
  const found = openAsk(state, happening);
  if (!found.ok) return found;
  const { ask } = found.value;
  if (ask.kind !== 'value') return refuse('wrongAnswer', `No value is asked here: ${ask.label}.`);
  const fastener = checkFastener(state, ask, happening.fastener);
  if (!fastener.ok) return fastener;
  const wanted = quantityOf(askSpecification(state.revision, ask).unit);
  const given = quantityOf(happening.unit);
  if (given !== wanted)
    return refuse('wrongQuantity', `That is a ${given}; a ${wanted} is asked: ${ask.label}.`);
  if (happening.adapter !== undefined && given !== 'torque')
    return refuse('wrongAnswer', 'An adapter changes torques only: give this value without one.');
  const there = atFastener(happening, happening.tool?.expandedUncertainty);
  if (!there.ok) return refuse('wrongAnswer', there.error.message);
  const { canonical } = there.value;
  if (!Number.isFinite(canonical))
    return refuse('wrongAnswer', 'That number cannot be used: give the value again.');
  const reading: Reading = {
    id: event.id,
    seq: event.seq,
    step: happening.step,
    ask: happening.ask,
    ...(happening.fastener === undefined ? {} : { fastener: happening.fastener }),
    value: happening.value,
    unit: happening.unit,
    canonical,
    verdict: judgeValue(
      state,
      ask,
      happening.fastener,
      happening,
      happening.tool?.expandedUncertainty,
    ).verdict,
    ...(happening.tool === undefined ? {} : { tool: happening.tool }),
    ...(happening.adapter === undefined ? {} : { adapter: happening.adapter }),
    status: 'provisional',
    at: event.at,
    actor: event.actor,
    input: event.input,
  };
  return ok({ ...state, readings: replaced(state.readings, reading) });
};

/** Reusing what the sheet wants new, or leaves to the mechanic, needs a word why. */
const reasonMissing = (
  state: JobState,
  ask: Ask,
  answer: Happened<'answerGiven'>['answer'],
): boolean =>
  ask.kind === 'choice' &&
  answer.kind === 'choice' &&
  answer.option === 'reused' &&
  answer.reason === undefined &&
  partOf(state.revision, ask.part)?.reuse !== 'always';

/** An answer, shown; it counts once the step is done. */
export const answerGiven = (
  state: JobState,
  event: JobEvent,
  happening: Happened<'answerGiven'>,
): Result<JobState, Refusal> => {
  const found = openAsk(state, happening);
  if (!found.ok) return found;
  const { step, ask } = found.value;
  if (ask.kind !== happening.answer.kind)
    return refuse('wrongAnswer', `That answers something else. Asked is: ${ask.label}.`);
  if (ask.kind === 'check' && step.oneShot && lookup(state.steps, step.id)?.ready !== true)
    return refuse('notReady', 'The check comes after the work: say ready before you start.');
  if (reasonMissing(state, ask, happening.answer))
    return refuse('reasonNeeded', 'Say why it is used again.');
  const answer: Answer = {
    id: event.id,
    seq: event.seq,
    step: happening.step,
    ask: happening.ask,
    answer: happening.answer,
    status: 'provisional',
    at: event.at,
    actor: event.actor,
  };
  return ok({ ...state, answers: replaced(state.answers, answer) });
};

/** "Take that back": a reading or answer that does not count yet is withdrawn; nothing is lost. */
export const entryWithdrawn = (
  state: JobState,
  happening: Happened<'entryWithdrawn'>,
): Result<JobState, Refusal> => {
  const entry = [...state.readings, ...state.answers].find(({ id }) => id === happening.entry);
  if (entry === undefined)
    return refuse('unknownEntry', 'There is no such value or answer to take back.');
  if (entry.status === 'counted')
    return refuse('entryNotOpen', 'It counts already: reopen the step to change it.');
  if (entry.status !== 'provisional')
    return refuse('entryNotOpen', 'It does not stand any more: nothing to take back.');
  const withdraw = <T extends Reading | Answer>(all: readonly T[]): readonly T[] =>
    all.map((one) => (one.id === happening.entry ? { ...one, status: 'withdrawn' as const } : one));
  return ok({
    ...state,
    readings: withdraw(state.readings),
    answers: withdraw(state.answers),
  });
};
