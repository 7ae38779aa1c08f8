import type { Happening, Reason } from '../job';
import { answered, ask, happen, happenAndShow, refuse, show } from './happen';
import { nextDoable } from './moves';
import type { KioskEnv, KioskState, KioskStep, Question, ReasonFor, Via } from './state';
import { storeDraft } from './draft';

const withdrawn = (entries: readonly string[]): readonly Happening[] =>
  entries.map((entry) => ({ type: 'entryWithdrawn', entry }));

/** What happens once the reason is known. */
const happeningsFor = (reasonFor: ReasonFor, reason: Reason): readonly Happening[] => {
  switch (reasonFor.kind) {
    case 'leaveOut':
      return [{ type: 'stepLeftOut', step: reasonFor.step, reason }];
    case 'reopen':
      return [
        { type: 'stepReopened', step: reasonFor.step, reason },
        { type: 'stepBegun', step: reasonFor.step },
      ];
    case 'reuse':
      return [
        ...withdrawn(reasonFor.replaces),
        {
          type: 'answerGiven',
          step: reasonFor.step,
          ask: reasonFor.ask,
          answer: { kind: 'choice', option: 'reused', reason },
        },
      ];
    case 'deviation':
      return [{ type: 'deviationNoted', kind: reasonFor.deviation, step: reasonFor.step, reason }];
    case 'hold':
      return [{ type: 'jobHeld', reason }];
    case 'leftOver':
      return [{ type: 'kitLeftOver', kitItem: reasonFor.kitItem, count: reasonFor.count, reason }];
  }
};

const doneText = (reasonFor: ReasonFor): string => {
  switch (reasonFor.kind) {
    case 'leaveOut':
      return 'Step left out, with your reason';
    case 'reopen':
      return 'Step reopened; what lies on top of it is open again';
    case 'reuse':
      return 'Reused, with your reason';
    case 'deviation':
      return 'Deviation noted';
    case 'hold':
      return 'Job on hold';
    case 'leftOver':
      return 'Declared left over';
  }
};

/** The words or the sound that a reason question waited for. */
export const giveReason = (
  state: KioskState,
  reason: { readonly text?: string; readonly clip?: string },
  via: Via,
  env: KioskEnv,
): KioskStep => {
  const { question } = state;
  if (question?.kind !== 'reason') return refuse(state, via, 'No reason was asked for');
  const text = reason.text?.trim() ?? '';
  if (text === '' && reason.clip === undefined)
    return ask(state, via, question, `Nothing was heard. ${question.text}`);
  const given: Reason = {
    ...(text === '' ? {} : { text }),
    ...(reason.clip === undefined ? {} : { clip: reason.clip }),
  };
  const told = happenAndShow(
    { ...answered(state), view: 'step' },
    happeningsFor(question.reasonFor, given),
    { via, askedBack: true },
    env,
    { tone: 'good', text: doneText(question.reasonFor) },
  );
  return question.reasonFor.kind === 'leaveOut' ? goOn(told, via, env) : told;
};

/** After a step was left out the next one is shown; the outcome on the screen stays. */
const goOn = (told: KioskStep, via: Via, env: KioskEnv): KioskStep => {
  const next = nextDoable(told.state.job);
  if (next === undefined || told.state.outcome === undefined) return told;
  const begun = happen(told.state, [{ type: 'stepBegun', step: next.id }], { via }, env);
  return begun.ok ? { state: begun.state, effects: [...told.effects, ...begun.effects] } : told;
};

export const sayYes = (state: KioskState, via: Via, env: KioskEnv): KioskStep => {
  const { question } = state;
  if (question === undefined) return refuse(state, via, 'Nothing was asked');
  switch (question.kind) {
    case 'value':
      return storeDraft(state, question.draft, via, true, env);
    case 'whichValue':
      return refuse(state, via, 'Say the number again, digit by digit');
    case 'reason':
      return refuse(state, via, question.text);
    case 'confirm':
      return confirmed(answered(state), question, via, env);
  }
};

const confirmed = (
  state: KioskState,
  { act }: Extract<Question, { kind: 'confirm' }>,
  via: Via,
  env: KioskEnv,
): KioskStep => {
  switch (act.kind) {
    case 'happen':
      return happenAndShow(
        state,
        act.happenings,
        { via, askedBack: true },
        env,
        { tone: 'good', text: act.done },
        [{ kind: 'say', text: act.done }],
      );
    case 'askReason':
      return ask(
        state,
        via,
        { kind: 'reason', text: act.text, reasonFor: act.reasonFor },
        act.text,
      );
  }
};

/** "No", or "take that back" while a question is open: the question falls, nothing is stored. */
export const sayNo = (state: KioskState, via: Via): KioskStep =>
  state.question === undefined
    ? refuse(state, via, 'Nothing was asked')
    : show(answered(state), via, { tone: 'plain', text: 'Not taken. Nothing was stored' }, [
        { kind: 'tone', tone: 'done' },
      ]);
