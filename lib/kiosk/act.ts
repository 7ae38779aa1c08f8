import type { Intent } from '../voice/intent';
import type { KioskState } from './state';
import { takesTorque } from './adapter-in-use';
import { currentStep, openWants } from './wanted';
import { stepNumber } from '../procedure';

/**
 * One act, one definition: what a phrase, a key, a touch target and the foot switch do.
 * Its phrases are those of its intent in `lib/voice`.
 */
export interface Act {
  readonly name: string;
  /** On the touch target and in the list of what can be said. */
  readonly label: string;
  /** `KeyboardEvent.key` values. */
  readonly keys: readonly string[];
  readonly intent: Intent;
  /** Makes sense now. */
  readonly available: (state: KioskState) => boolean;
}

const calm = (state: KioskState): boolean => state.question === undefined;
const running = (state: KioskState): boolean => state.job.phase === 'running';
const working = (state: KioskState): boolean => calm(state) && running(state);
const wants = (state: KioskState, kind: 'choice' | 'check'): boolean =>
  working(state) && currentStep(state.job).asks.some((ask) => ask.kind === kind);
const waitsForReady = (state: KioskState): boolean => {
  const step = currentStep(state.job);
  return (
    working(state) && step.oneShot && state.job.steps[step.id]?.ready !== true && isOpen(state)
  );
};
const isOpen = (state: KioskState): boolean =>
  state.job.steps[state.job.currentStep]?.status === 'open';

export const acts: readonly Act[] = [
  {
    name: 'yes',
    label: 'Yes',
    keys: ['y'],
    intent: { kind: 'yes' },
    available: (s) => !calm(s) && s.question?.kind !== 'reason',
  },
  {
    name: 'no',
    label: 'No',
    keys: ['n', 'Escape'],
    intent: { kind: 'no' },
    available: (s) => !calm(s),
  },
  {
    name: 'next',
    label: 'Next',
    keys: ['ArrowRight', 'PageDown'],
    intent: { kind: 'next' },
    available: working,
  },
  {
    name: 'back',
    label: 'Back',
    keys: ['ArrowLeft', 'PageUp'],
    intent: { kind: 'back' },
    available: working,
  },
  {
    name: 'ready',
    label: 'Ready',
    keys: ['r'],
    intent: { kind: 'ready' },
    available: waitsForReady,
  },
  {
    name: 'passed',
    label: 'Check passed',
    keys: ['p'],
    intent: { kind: 'check', passed: true },
    available: (s) => wants(s, 'check'),
  },
  {
    name: 'failed',
    label: 'Check failed',
    keys: ['f'],
    intent: { kind: 'check', passed: false },
    available: (s) => wants(s, 'check'),
  },
  {
    name: 'replaced',
    label: 'Replaced',
    keys: ['w'],
    intent: { kind: 'choice', option: 'replaced' },
    available: (s) => wants(s, 'choice'),
  },
  {
    name: 'reused',
    label: 'Reused',
    keys: ['u'],
    intent: { kind: 'choice', option: 'reused' },
    available: (s) => wants(s, 'choice'),
  },
  {
    name: 'takeBack',
    label: 'Take that back',
    keys: ['t'],
    intent: { kind: 'takeBack' },
    available: (s) => running(s) && (!calm(s) || hasEntries(s)),
  },
  {
    name: 'deviation',
    label: 'Note a deviation',
    keys: ['d'],
    intent: { kind: 'noteDeviation' },
    available: working,
  },
  {
    name: 'leaveOut',
    label: 'Leave out this step',
    keys: ['x'],
    intent: { kind: 'leaveOut' },
    available: (s) => working(s) && isOpen(s),
  },
  {
    name: 'reopen',
    label: 'Reopen this step',
    keys: ['o'],
    intent: { kind: 'reopen' },
    available: (s) => working(s) && !isOpen(s),
  },
  {
    name: 'leftOver',
    label: 'Left over',
    keys: ['k'],
    intent: { kind: 'leftOver' },
    available: working,
  },
  {
    name: 'hold',
    label: 'Hold the job',
    keys: ['h'],
    intent: { kind: 'hold' },
    available: working,
  },
  {
    name: 'resume',
    label: 'Resume',
    keys: ['Enter'],
    intent: { kind: 'resume' },
    available: (s) => calm(s) && s.job.phase === 'held',
  },
  {
    name: 'foreman',
    label: 'Call the foreman',
    keys: ['m'],
    intent: { kind: 'callForeman' },
    available: (s) => calm(s) && s.job.phase !== 'closed' && s.job.foremanCalledAt === undefined,
  },
  {
    name: 'repeat',
    label: 'Repeat',
    keys: ['a'],
    intent: { kind: 'repeat' },
    available: (s) => s.job.phase !== 'closed',
  },
  {
    name: 'showStep',
    label: 'Show the step',
    keys: ['s'],
    intent: { kind: 'show', what: 'step' },
    available: (s) => calm(s) && s.view !== 'step',
  },
  {
    name: 'showParts',
    label: 'Show parts',
    keys: ['1'],
    intent: { kind: 'show', what: 'parts' },
    available: calm,
  },
  {
    name: 'showOrder',
    label: 'Show the order',
    keys: ['2'],
    intent: { kind: 'show', what: 'order' },
    available: calm,
  },
  {
    name: 'showBolts',
    label: 'Show bolts',
    keys: ['3'],
    intent: { kind: 'show', what: 'bolts' },
    available: calm,
  },
  {
    name: 'showCaution',
    label: 'Show cautions',
    keys: ['4'],
    intent: { kind: 'show', what: 'caution' },
    available: calm,
  },
  {
    name: 'showAdapter',
    label: 'Adapter',
    keys: ['e'],
    intent: { kind: 'show', what: 'adapter' },
    available: (s) => working(s) && isOpen(s) && takesTorque(s.job),
  },
  {
    name: 'showLedger',
    label: 'Show loose ends',
    keys: ['l'],
    intent: { kind: 'show', what: 'ledger' },
    available: calm,
  },
  {
    name: 'showPhrases',
    label: 'What can I say',
    keys: ['?'],
    intent: { kind: 'show', what: 'phrases' },
    available: calm,
  },
  {
    name: 'close',
    label: 'Close the job',
    keys: ['c'],
    intent: { kind: 'closeJob' },
    available: working,
  },
];

const hasEntries = (state: KioskState): boolean =>
  [...state.job.readings, ...state.job.answers].some(
    ({ step, status }) => step === state.job.currentStep && status === 'provisional',
  );

export const availableActs = (state: KioskState): readonly Act[] =>
  acts.filter((act) => act.available(state));

/** The act of a key, if it makes sense now. Digits while a value is wanted belong to the value pad, not here. */
export const actForKey = (state: KioskState, key: string): Act | undefined =>
  availableActs(state).find(({ keys }) => keys.includes(key));

/** What a single press of the foot switch does: the one thing that is most likely meant. */
export const primaryAct = (state: KioskState): Act | undefined => {
  const first = ['yes', 'resume', 'ready', 'next'];
  return first.flatMap((name) => availableActs(state).filter((act) => act.name === name))[0];
};

/** What a long press of the foot switch does. */
export const secondaryAct = (state: KioskState): Act | undefined => {
  const first = ['no', 'back'];
  return first.flatMap((name) => availableActs(state).filter((act) => act.name === name))[0];
};

/** "Step 4 of 27" */
export const stepPosition = (
  state: KioskState,
): { readonly number: number; readonly of: number } => ({
  number: stepNumber(state.job.revision, state.job.currentStep),
  of: state.job.revision.steps.length,
});

/** Whether the step waits for a number: then digit keys open the value pad. */
export const wantsNumber = (state: KioskState): boolean =>
  openWants(state.job, currentStep(state.job)).some(
    ({ ask }) => ask.kind === 'value' || ask.kind === 'count',
  );
