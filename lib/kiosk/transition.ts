import { handOver, handOverSpeech } from '../handover';
import { lastWorker } from '../job';
import { unreachable } from '../result';
import type { HoldReason, Intent, IntentKind } from '../voice/intent';
import { forgetAdapter, putAdapter } from './adapter-in-use';
import { check, choose, ready } from './answers';
import { validIntents } from './valid-intents';
import { answered, ask, happenAndShow, refuse, show } from './happen';
import { askCareful, isCareful, leftOver } from './careful-acts';
import { goBack, goNext, goToStep } from './moves';
import { withHearing } from './heard-before';
import { giveReason, sayNo, sayYes } from './questions';
import type { KioskEffect, KioskEnv, KioskInput, KioskState, KioskStep, Via } from './state';
import { takeValue } from './values';
import { currentStep } from './wanted';

/** What is written down for a hold that was called by one of the usual phrases. */
export const holdWords: Record<HoldReason, string> = {
  parts: 'Waiting for parts',
  tool: 'Waiting for a tool',
  foreman: 'Waiting for the foreman',
  approval: 'Waiting for approval',
  break: 'Break',
};

/** A fresh kiosk on a job. */
export const openKiosk = (job: KioskState['job']): KioskState => ({ job, view: 'step' });

/** The kiosk as a pure machine: an input gives the next state, and effects as data. */
export const kioskTransition = (state: KioskState, input: KioskInput, env: KioskEnv): KioskStep => {
  const after = answerTo(state, input, env);
  return withHearing(state, input, { ...after, state: forgetAdapter(state, after.state) });
};

const answerTo = (state: KioskState, input: KioskInput, env: KioskEnv): KioskStep => {
  switch (input.kind) {
    case 'act':
      return act(state, input.intent, input.via, env);
    case 'notUnderstood':
      return show(
        state,
        { by: 'voice', said: input.said, confidence: 0, certainty: 'unsure' },
        { tone: 'plain', text: input.why },
      );
    case 'reason':
      return giveReason(state, input, input.via, env);
    case 'choose':
      return { state: { ...state, chosen: input.fastener }, effects: [] };
    case 'open':
      return { state: { ...state, view: input.view }, effects: [] };
    case 'deviation': {
      const text = 'What was different, and why?';
      return ask(
        state,
        { by: 'touch' },
        {
          kind: 'reason',
          text,
          reasonFor: { kind: 'deviation', deviation: input.deviation, step: state.job.currentStep },
        },
        text,
      );
    }
    case 'leftOver':
      return leftOver(state, input.kitItem, input.count, { by: 'touch' });
    case 'adapter':
      return putAdapter(state, input.inUse, input.via);
    case 'job':
      return { state: { ...answered(state), job: input.job }, effects: [] };
  }
};

/** What is said meanwhile could be meant with the adapter or without. */
const adapterFirst = 'First choose the adapter, or go back to the step';

const valid = (state: KioskState, intent: Intent): boolean =>
  validIntents(state).includes(intent.kind);

const act = (state: KioskState, intent: Intent, via: Via, env: KioskEnv): KioskStep => {
  if (!valid(state, intent)) return refuse(state, via, notNow(state));
  if (via.by === 'voice' && via.certainty === 'unsure' && !bearsDoubt(intent))
    return show(state, via, {
      tone: 'plain',
      text: `Not sure I heard that. ${via.why ?? ''} Say it again`.replace('  ', ' '),
    });
  if (state.view === 'handover' && !besideSummary.has(intent.kind))
    return afterSummary(state, intent, via);
  if (isCareful(intent)) return askCareful(state, intent, via);
  switch (intent.kind) {
    case 'next':
      return goNext(state, via, env);
    case 'back':
      return goBack(state, via, env);
    case 'goTo':
      return goToStep(state, intent.step, via, env);
    case 'repeat':
      return repeat(state, via);
    case 'show':
      return show({ ...state, view: intent.what }, via, {
        tone: 'plain',
        text: `Showing ${intent.what}`,
      });
    case 'value':
      if (state.view === 'adapter') return refuse(state, via, adapterFirst);
      return takeValue(state, carryOver(state, intent), via, env);
    case 'ambiguousValue':
      if (state.view === 'adapter') return refuse(state, via, adapterFirst);
      return whichValue(state, intent, via);
    case 'yes':
      return sayYes(state, via, env);
    case 'no':
      return sayNo(state, via);
    case 'choice':
      return choose(state, intent.option, via, env);
    case 'check':
      return check(state, intent.passed, via, env);
    case 'ready':
      return ready(state, via, env);
    case 'noteDeviation': {
      const text = 'What was different, and why?';
      return ask(
        state,
        via,
        {
          kind: 'reason',
          text,
          reasonFor: { kind: 'deviation', deviation: 'anotherWay', step: state.job.currentStep },
        },
        text,
      );
    }
    case 'hold':
      return intent.reason === undefined
        ? ask(
            state,
            via,
            { kind: 'reason', text: 'Why is it on hold?', reasonFor: { kind: 'hold' } },
            'Why is it on hold?',
          )
        : happenAndShow(
            state,
            [{ type: 'jobHeld', reason: { text: holdWords[intent.reason] } }],
            { via },
            env,
            {
              tone: 'good',
              text: `On hold: ${holdWords[intent.reason]}`,
            },
          );
    case 'resume':
      return resume(state, via, env);
    case 'callForeman':
      return happenAndShow(state, [{ type: 'foremanCalled' }], { via }, env, {
        tone: 'good',
        text: 'The foreman is called',
      });
    default:
      return unreachable(intent);
  }
};

/** What may be done while the summary is read; everything else is done once it was. */
const besideSummary: ReadonlySet<IntentKind> = new Set<IntentKind>([
  'repeat',
  'show',
  'callForeman',
  'hold',
  'back',
]);

const afterSummary = (state: KioskState, intent: Intent, via: Via): KioskStep =>
  intent.kind === 'next'
    ? show({ ...state, view: 'step' }, via, { tone: 'plain', text: 'Going on' })
    : refuse(state, via, 'First read where the job stands, then say "next"');

/** Whoever takes a job over from somebody else is shown first where it stands. */
const resume = (state: KioskState, via: Via, env: KioskEnv): KioskStep => {
  const takesOver = state.job.workers.length > 0 && lastWorker(state.job) !== env.actor;
  const going = happenAndShow(state, [{ type: 'jobResumed' }], { via }, env, {
    tone: 'good',
    text: 'Going on',
  });
  return takesOver && going.state.job.phase === 'running'
    ? { ...going, state: { ...going.state, view: 'handover' } }
    : going;
};

/** Values carry their doubt into the question; what is careful asks anyway. All else is simply said again. */
const bearsDoubt = (intent: Intent): boolean =>
  isCareful(intent) || ['value', 'ambiguousValue', 'choice', 'check', 'no'].includes(intent.kind);

const notNow = (state: KioskState): string => {
  if (state.question?.kind === 'confirm') return `First: ${state.question.text} Yes or no`;
  if (state.question?.kind === 'reason') return state.question.text;
  if (state.question !== undefined) return 'First say yes or no to the value';
  if (state.job.phase === 'held') return 'The job is on hold. Say "resume"';
  return 'The job is closed';
};

/** A number said after "which one?" keeps the unit and the bolt that were said with the first try. */
const carryOver = (
  state: KioskState,
  intent: Extract<Intent, { kind: 'value' }>,
): Extract<Intent, { kind: 'value' }> => {
  const { question } = state;
  if (question?.kind !== 'whichValue') return intent;
  return {
    ...intent,
    ...(intent.unit === undefined && question.unit !== undefined ? { unit: question.unit } : {}),
    ...(intent.label === undefined && question.label !== undefined
      ? { label: question.label }
      : {}),
  };
};

const whichValue = (
  state: KioskState,
  intent: Extract<Intent, { kind: 'ambiguousValue' }>,
  via: Via,
): KioskStep => {
  const text = `${intent.candidates.join(' or ')}? Say it digit by digit`;
  return ask(
    state,
    via,
    {
      kind: 'whichValue',
      candidates: intent.candidates,
      ...(intent.unit === undefined ? {} : { unit: intent.unit }),
      ...(intent.label === undefined ? {} : { label: intent.label }),
    },
    text,
  );
};

const repeat = (state: KioskState, via: Via): KioskStep => {
  const text =
    state.question !== undefined
      ? (state.outcome?.text ?? '')
      : state.view === 'handover'
        ? handOverSpeech(handOver(state.job))
        : currentStep(state.job).instruction;
  const effects: readonly KioskEffect[] = [{ kind: 'say', text }];
  return { ...show(state, via, state.outcome ?? { tone: 'plain', text: 'Repeating' }, effects) };
};
