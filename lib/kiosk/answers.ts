import type { Happening } from '../job';
import { answered, ask, happenAndShow, refuse } from './happen';
import type { KioskEnv, KioskState, KioskStep, Via } from './state';
import { allWants, currentStep, openWants, standing, wantLabel, type Want } from './wanted';
import { spokenFigure } from './draft';

const firstWant = (state: KioskState, kind: 'choice' | 'check'): Want | undefined => {
  const step = currentStep(state.job);
  return (
    openWants(state.job, step).find((want) => want.ask.kind === kind) ??
    allWants(state.job, step).find((want) => want.ask.kind === kind)
  );
};

const withdrawals = (state: KioskState, want: Want): readonly string[] => {
  const earlier = standing(state.job, currentStep(state.job).id, want);
  return earlier === undefined ? [] : [earlier.id];
};
const withdrawn = (entries: readonly string[]): readonly Happening[] =>
  entries.map((entry) => ({ type: 'entryWithdrawn', entry }));

const isUnsure = (via: Via): boolean => via.by === 'voice' && via.certainty === 'unsure';

/** "Reused" asks why; "replaced" stands as it is. */
export const choose = (
  state: KioskState,
  option: 'reused' | 'replaced',
  via: Via,
  env: KioskEnv,
): KioskStep => {
  const want = firstWant(state, 'choice');
  if (want?.ask.kind !== 'choice') return refuse(state, via, 'This step asks nothing of that kind');
  const replaces = withdrawals(state, want);
  const step = currentStep(state.job).id;
  if (option === 'reused') {
    const text = `${want.ask.label}: reused. Why?`;
    return ask(
      state,
      via,
      { kind: 'reason', text, reasonFor: { kind: 'reuse', step, ask: want.ask.id, replaces } },
      text,
    );
  }
  const happenings: readonly Happening[] = [
    ...withdrawn(replaces),
    { type: 'answerGiven', step, ask: want.ask.id, answer: { kind: 'choice', option } },
  ];
  const text = `${want.ask.label}: replaced`;
  return isUnsure(via) || replaces.length > 0
    ? ask(
        state,
        via,
        { kind: 'confirm', text: `${text}?`, act: { kind: 'happen', happenings, done: text } },
        `${text}?`,
      )
    : happenAndShow(answered(state), happenings, { via }, env, { tone: 'good', text });
};

/** A function check. "Failed" is asked back, since it leaves a loose end. */
export const check = (state: KioskState, passed: boolean, via: Via, env: KioskEnv): KioskStep => {
  const want = firstWant(state, 'check');
  if (want === undefined) return refuse(state, via, 'This step has no check');
  const replaces = withdrawals(state, want);
  const happenings: readonly Happening[] = [
    ...withdrawn(replaces),
    {
      type: 'answerGiven',
      step: currentStep(state.job).id,
      ask: want.ask.id,
      answer: { kind: 'check', passed },
    },
  ];
  const text = `${want.ask.label}: ${passed ? 'passed' : 'failed'}`;
  return !passed || isUnsure(via) || replaces.length > 0
    ? ask(
        state,
        via,
        { kind: 'confirm', text: `${text}?`, act: { kind: 'happen', happenings, done: text } },
        `${text}?`,
      )
    : happenAndShow(answered(state), happenings, { via }, env, { tone: 'good', text });
};

export const ready = (state: KioskState, via: Via, env: KioskEnv): KioskStep => {
  const step = currentStep(state.job);
  if (!step.oneShot) return refuse(state, via, 'This step needs no "ready"');
  if (state.job.steps[step.id]?.ready === true)
    return refuse(state, via, 'Ready was given. Say "next" when it is done');
  return happenAndShow(state, [{ type: 'readyGiven', step: step.id }], { via }, env, {
    tone: 'good',
    text: 'Ready. One try: do it now, then say how the check went',
  });
};

const entryText = (state: KioskState, id: string): string => {
  const step = currentStep(state.job);
  const reading = state.job.readings.find((entry) => entry.id === id);
  const want = allWants(state.job, step).find((w) => standing(state.job, step.id, w)?.id === id);
  const label = want === undefined ? 'the last entry' : wantLabel(state.job, want);
  return reading === undefined ? label : `${label}, ${spokenFigure(reading.value, reading.unit)}`;
};

/** The last entry of the current step that still stands. */
const lastEntry = (state: KioskState): string | undefined =>
  [...state.job.readings, ...state.job.answers]
    .filter((entry) => entry.step === state.job.currentStep && entry.status === 'provisional')
    .sort((a, b) => a.seq - b.seq)
    .at(-1)?.id;

/** "Take that back": the open question falls, else the last entry of this step, after a yes. */
export const takeBack = (state: KioskState, via: Via): KioskStep => {
  const entry = lastEntry(state);
  if (entry === undefined)
    return refuse(
      state,
      via,
      'Nothing in this step to take back. To change a step that is done, say "reopen" and its number',
    );
  const text = `Take back ${entryText(state, entry)}?`;
  return ask(
    state,
    via,
    {
      kind: 'confirm',
      text,
      act: {
        kind: 'happen',
        happenings: [{ type: 'entryWithdrawn', entry }],
        done: `Taken back: ${entryText(state, entry)}`,
      },
    },
    text,
  );
};
