import fc from 'fast-check';
import { canBegin, nextStep, type Happening, type JobState } from '@/lib/job';
import { looseEnds } from '@/lib/ledger';
import type { Revision } from '@/lib/procedure';
import { Bay, type Actor } from './driver';
import { goodEntries } from './hands';

/** One throw of dice: what to try, with which thing, by whom. Shrinks towards the first of everything. */
export interface Throw {
  readonly act: number;
  readonly which: number;
  readonly other: number;
  readonly actor: Actor;
}

export const throwsOfDice = (maxLength: number) =>
  fc.array(
    fc.record<Throw>({
      act: fc.nat(23),
      which: fc.nat(97),
      other: fc.nat(97),
      actor: fc.constantFrom<Actor>('mia', 'mia', 'max', 'mia', 'fred', 'fay'),
    }),
    // As long as allowed, mostly: short walks meet little.
    { maxLength, size: 'max' },
  );

const pick = <T>(all: readonly T[], which: number): T | undefined =>
  all.length === 0 ? undefined : all[which % all.length];

const why = { text: 'said so' };
const strange = 'no-such-thing';

/** A value that may be good, on the edge, out of spec, or of another unit. */
const anyReading = (state: JobState, good: Happening | undefined, other: number): Happening => {
  if (good?.type !== 'readingTaken') return good ?? { type: 'stepDone', step: state.currentStep };
  const factor = [1, 1, 1, 1.05, 1.1, 1.3, 0.5, 0][other % 8] ?? 1;
  const { tool, ...bare } = good;
  return {
    ...bare,
    value: good.value * factor,
    ...(other % 13 === 0 ? { unit: 'V' as const } : {}),
    ...(other % 5 === 0 || tool === undefined ? {} : { tool }),
  };
};

const anyAnswer = (state: JobState, good: Happening | undefined, other: number): Happening => {
  if (good?.type !== 'answerGiven') return good ?? { type: 'stepDone', step: state.currentStep };
  const { answer } = good;
  switch (answer.kind) {
    case 'check':
      return { ...good, answer: { kind: 'check', passed: other % 3 > 0 } };
    case 'count':
      return { ...good, answer: { kind: 'count', count: other % 4 } };
    case 'choice':
      return {
        ...good,
        answer:
          other % 3 === 0
            ? { kind: 'choice', option: 'replaced' }
            : { kind: 'choice', option: 'reused', ...(other % 3 === 1 ? { reason: why } : {}) },
      };
  }
};

/** What one throw tries in a state: mostly sensible, sometimes not. */
export const happeningOf = (bay: Bay, { act, which, other }: Throw): Happening => {
  const { state, revision } = bay;
  const anyStep = pick(revision.steps, which)?.id ?? strange;
  const step = other % 17 === 0 ? strange : anyStep;
  const here = state.currentStep;
  const group = pick(revision.groups, which);
  const entry = pick([...state.readings, ...state.answers], which)?.id ?? bay.log[0]?.id ?? '';
  const deviation = pick(state.deviations, which)?.id ?? strange;
  const end = pick(looseEnds(state), which);
  switch (act) {
    case 0:
    case 1:
    case 2:
    case 3:
      return { type: 'stepDone', step: other % 7 === 0 ? step : here };
    case 4:
    case 5:
    case 6:
      return { type: 'stepBegun', step };
    case 7:
      return { type: 'readyGiven', step: other % 5 === 0 ? step : here };
    case 8:
    case 9:
    case 10:
      return anyReading(state, pick(goodEntries(bay, here), which), other);
    case 11:
    case 12:
      return anyAnswer(state, pick(goodEntries(bay, here), which), other);
    case 13:
      return { type: 'entryWithdrawn', entry };
    case 14:
      return other % 4
        ? { type: 'stepDone', step: here }
        : { type: 'stepLeftOut', step, reason: why };
    case 15:
      return { type: 'stepReopened', step, reason: why };
    case 16:
      return { type: 'fastenersLaid', group: group?.id ?? strange, tray: other % 2 ? 'X' : 'Y' };
    case 17:
      return {
        type: 'kitLeftOver',
        kitItem: pick(revision.kit, which)?.id ?? strange,
        count: 1 + (other % 3),
        reason: why,
      };
    case 18:
      return {
        type: 'deviationNoted',
        kind: other % 2 ? 'orderChanged' : 'missingOrDamaged',
        step: other % 3 ? here : step,
        reason: why,
      };
    case 19:
      return {
        type: 'deviationDecided',
        deviation,
        decision: other % 3 === 0 ? 'rework' : 'accepted',
        reason: why,
      };
    case 20:
      return {
        type: 'looseEndSigned',
        looseEnd: end?.key ?? strange,
        mark: other % 5 === 0 ? strange : (end?.mark ?? ''),
        reason: why,
      };
    case 21:
      return other % 6 ? { type: 'jobResumed' } : { type: 'jobHeld', reason: why };
    case 22:
      return other % 2 ? { type: 'foremanCalled' } : { type: 'foremanAnswered' };
    default:
      return { type: 'jobClosed' };
  }
};

/** The good way to go on: resume, begin what may begin, be ready, enter what is asked, be done. */
const onwards = (bay: Bay): Happening => {
  const { state, revision } = bay;
  const here = state.currentStep;
  if (state.phase === 'held') return { type: 'jobResumed' };
  if (!canBegin(state, here).ok) return { type: 'stepBegun', step: nextStep(state) ?? here };
  const oneShot = revision.steps.find(({ id }) => id === here)?.oneShot === true;
  if (oneShot && state.steps[here]?.ready === false) return { type: 'readyGiven', step: here };
  const [entry] = goodEntries(bay, here);
  return entry ?? { type: 'stepDone', step: here };
};

/** Most throws that could start anything go on the good way instead, so that walks get far. */
const goesOn = (bay: Bay, dice: Throw): Happening =>
  dice.act <= 12 && dice.other % 4 > 0 ? onwards(bay) : happeningOf(bay, dice);

/** Foremen mostly keep to deciding and signing; one who works loses that. */
const byWhom = ({ type }: Happening, { actor, other }: Throw): Actor => {
  if (type === 'deviationDecided' || type === 'looseEndSigned')
    return other % 4 === 0 ? actor : other % 4 === 1 ? 'fay' : 'fred';
  return actor === 'fred' && other % 5 > 0 ? 'mia' : actor;
};

/** Walks a job through the throws; `seen` is shown every state, whether the throw was accepted or not. */
export const walk = (
  revision: Revision,
  dice: readonly Throw[],
  seen: (bay: Bay, tried: Happening, accepted: boolean) => void = () => undefined,
): Bay => {
  const bay = new Bay(revision);
  for (const one of dice) {
    const happening = goesOn(bay, one);
    const after = bay.try(happening, byWhom(happening, one));
    seen(bay, happening, after.ok);
  }
  return bay;
};
