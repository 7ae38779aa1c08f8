import { mayClose, unsigned } from '../ledger';
import { kitItemOf, stepNumber } from '../procedure';
import { unreachable } from '../result';
import { asksBack, type CarefulKind } from '../voice/asks-back';
import type { Intent } from '../voice/intent';
import { takeBack } from './answers';
import { ask, refuse } from './happen';
import { openEndsText } from './moves';
import { sayNo } from './questions';
import type { KioskState, KioskStep, ReasonFor, Via } from './state';
import { currentStep } from './wanted';

type CarefulIntent = Extract<Intent, { kind: CarefulKind }>;

export const isCareful = (intent: Intent): intent is CarefulIntent => asksBack(intent.kind);

/**
 * Acts that are hard to undo: each asks whether, and where it matters why. They are given neither clock nor ids, so
 * that none of them can make an event: only the answer to the question does.
 */
export const askCareful = (state: KioskState, intent: CarefulIntent, via: Via): KioskStep => {
  switch (intent.kind) {
    case 'takeBack':
      return state.question === undefined ? takeBack(state, via) : sayNo(state, via);
    case 'leaveOut':
      return leaveOut(state, via);
    case 'reopen':
      return reopen(state, intent.step, via);
    case 'leftOver':
      return firstLeftOver(state, via);
    case 'closeJob':
      return close(state, via);
    default:
      return unreachable(intent);
  }
};

const confirmReason = (
  state: KioskState,
  via: Via,
  text: string,
  why: string,
  reasonFor: ReasonFor,
): KioskStep =>
  ask(
    state,
    via,
    { kind: 'confirm', text, act: { kind: 'askReason', text: why, reasonFor } },
    text,
  );

const leaveOut = (state: KioskState, via: Via): KioskStep =>
  confirmReason(
    state,
    via,
    `Leave out step ${stepNumber(state.job.revision, state.job.currentStep)}?`,
    'Why is it left out?',
    { kind: 'leaveOut', step: state.job.currentStep },
  );

const reopen = (state: KioskState, number: number | undefined, via: Via): KioskStep => {
  const step = number === undefined ? currentStep(state.job) : state.job.revision.steps[number - 1];
  if (step === undefined) return refuse(state, via, `There is no step ${String(number)}`);
  const n = stepNumber(state.job.revision, step.id);
  if (state.job.steps[step.id]?.status === 'open') return refuse(state, via, `Step ${n} is open`);
  return confirmReason(state, via, `Reopen step ${n}, ${step.title}?`, 'Why is it done again?', {
    kind: 'reopen',
    step: step.id,
  });
};

export const leftOver = (
  state: KioskState,
  kitItem: string,
  count: number,
  via: Via,
): KioskStep => {
  const name = kitItemOf(state.job.revision, kitItem)?.name ?? kitItem;
  return confirmReason(state, via, `${count} × ${name} left over?`, 'Why is it left over?', {
    kind: 'leftOver',
    kitItem,
    count,
  });
};

const firstLeftOver = (state: KioskState, via: Via): KioskStep => {
  const item = state.job.revision.kit.find(({ id, quantity }) => {
    const kit = state.job.kit[id];
    return kit !== undefined && kit.used + kit.leftOver < quantity;
  });
  const kit = item === undefined ? undefined : state.job.kit[item.id];
  return item === undefined || kit === undefined
    ? refuse(state, via, 'Every kit item is accounted for')
    : leftOver(state, item.id, item.quantity - kit.used - kit.leftOver, via);
};

const close = (state: KioskState, via: Via): KioskStep => {
  if (!mayClose(state.job)) {
    const first = unsigned(state.job)[0];
    const text = `${openEndsText(state.job)}${first === undefined ? '' : `: ${first.text}`}`;
    return refuse({ ...state, view: 'ledger' }, via, text);
  }
  const text = 'Close the job?';
  // The ledger is empty: what comes next is the closed job, not a panel.
  return ask(
    { ...state, view: 'step' },
    via,
    {
      kind: 'confirm',
      text,
      act: { kind: 'happen', happenings: [{ type: 'jobClosed' }], done: 'Job closed' },
    },
    text,
  );
};
