import { mayClose, unsigned } from '../ledger';
import { kitItemOf, stepNumber } from '../procedure';
import { ask, refuse } from './happen';
import { openEndsText } from './moves';
import type { KioskState, KioskStep, ReasonFor, Via } from './state';
import { currentStep } from './wanted';

/** Acts that are hard to undo: each asks whether, and where it matters why. */
export const confirmReason = (
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

export const reopen = (state: KioskState, number: number | undefined, via: Via): KioskStep => {
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

export const firstLeftOver = (state: KioskState, via: Via): KioskStep => {
  const item = state.job.revision.kit.find(({ id, quantity }) => {
    const kit = state.job.kit[id];
    return kit !== undefined && kit.used + kit.leftOver < quantity;
  });
  const kit = item === undefined ? undefined : state.job.kit[item.id];
  return item === undefined || kit === undefined
    ? refuse(state, via, 'Every kit item is accounted for')
    : leftOver(state, item.id, item.quantity - kit.used - kit.leftOver, via);
};

export const close = (state: KioskState, via: Via): KioskStep => {
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
