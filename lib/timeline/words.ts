import type { Happening, JobEvent, JobState } from '../job';
import { looseEnds } from '../ledger';
import { deviationWords, kindWords } from '../ledger/step-ends';
import { trayName } from '../ledger/words';
import { groupOf, kitItemOf } from '../procedure';
import { unreachable } from '../result';
import { answerWords, readingWords, withdrawnWords, type Around, type Words } from './entry-words';

type Happened<T extends Happening['type']> = Extract<Happening, { type: T }>;

const decisionWords = {
  accepted: 'Accepted',
  acceptedRecheckDue: 'Accepted, to be checked again after first use',
  rework: 'Sent back to be done again',
} as const;

const decidedWords = (
  { after }: Around,
  { deviation: id, decision, reason }: Happened<'deviationDecided'>,
): Words => {
  const deviation = after.deviations.find((one) => one.id === id);
  const about = deviation === undefined ? '' : `: ${deviationWords(after, deviation)}`;
  return {
    what: `${decisionWords[decision]}${about}`,
    kinds: ['deviations'],
    reason,
    ...(deviation === undefined ? {} : { step: deviation.step }),
  };
};

const signedWords = (
  { before }: Around,
  { looseEnd, reason }: Happened<'looseEndSigned'>,
): Words => {
  const end = looseEnds(before).find(({ key }) => key === looseEnd);
  return {
    what: `Signed for: ${end?.text ?? 'a loose end'}`,
    kinds: ['signatures'],
    reason,
    ...(end?.step === undefined ? {} : { step: end.step }),
  };
};

const notedWords = (
  { after }: Around,
  event: JobEvent,
  { kind, step, reason }: Happened<'deviationNoted'>,
): Words => {
  const deviation = after.deviations.find(({ id }) => id === event.id);
  return {
    what: `Deviation: ${deviation === undefined ? kindWords(kind) : deviationWords(after, deviation)}`,
    kinds: ['deviations'],
    step,
    reason,
  };
};

const movedWords = (
  { before }: Around,
  { bay, mechanic, reason }: Happened<'jobReassigned'>,
): Words => {
  const moved = bay === before.bay ? '' : 'Moved to another bay';
  const given = moved === '' ? 'Given to' : `${moved} and given to`;
  return {
    what: mechanic === undefined ? moved || 'Moved' : given,
    kinds: ['holds'],
    reason,
    ...(mechanic === undefined ? {} : { whom: mechanic }),
  };
};

const openedWords = ({ after }: Around): Words => ({
  what: `Job opened: ${after.revision.title}`,
  kinds: ['steps'],
  details: [
    `${after.vehicle.plate}, ${after.vehicle.description}`,
    `Maker’s sheet ${after.revision.source.sheet}, revision ${after.revision.source.revision}`,
  ],
});

/** The words of an event. The one place that knows them all: a new kind of event does not compile without its own. */
export const wordsOf = (before: JobState, after: JobState, event: JobEvent): Words => {
  const around = { before, after };
  const { happening } = event;
  switch (happening.type) {
    case 'jobOpened':
      return openedWords(around);
    case 'stepBegun':
      return { what: 'Step begun', kinds: ['steps'], step: happening.step };
    case 'readyGiven':
      return {
        what: 'Ready, before what cannot be undone',
        kinds: ['steps'],
        step: happening.step,
      };
    case 'readingTaken':
      return readingWords(around, event.id, happening.step);
    case 'answerGiven':
      return answerWords(around, happening);
    case 'entryWithdrawn':
      return withdrawnWords(around, happening.entry);
    case 'stepDone':
      return { what: 'Step done', kinds: ['steps'], step: happening.step };
    case 'stepLeftOut':
      return {
        what: 'Step left out',
        kinds: ['steps', 'deviations'],
        step: happening.step,
        reason: happening.reason,
      };
    case 'stepReopened':
      return {
        what: 'Step opened again',
        kinds: ['steps'],
        step: happening.step,
        reason: happening.reason,
      };
    case 'fastenersLaid':
      return {
        what: `${groupOf(after.revision, happening.group)?.name ?? 'Fasteners'} laid in ${trayName(happening.tray)}`,
        kinds: ['parts'],
      };
    case 'kitLeftOver':
      return {
        what: `Left over: ${happening.count} × ${kitItemOf(after.revision, happening.kitItem)?.name ?? 'kit item'}`,
        kinds: ['parts'],
        reason: happening.reason,
      };
    case 'deviationNoted':
      return notedWords(around, event, happening);
    case 'deviationDecided':
      return decidedWords(around, happening);
    case 'looseEndSigned':
      return signedWords(around, happening);
    case 'jobHeld':
      return { what: 'Put on hold', kinds: ['holds'], reason: happening.reason };
    case 'jobResumed':
      return { what: 'Hold lifted', kinds: ['holds'] };
    case 'foremanCalled':
      return { what: 'Foreman called', kinds: ['holds'] };
    case 'foremanAnswered':
      return { what: 'Foreman answered', kinds: ['holds'] };
    case 'jobReassigned':
      return movedWords(around, happening);
    case 'jobClosed':
      return { what: 'Job closed', kinds: ['steps'] };
    default:
      return unreachable(happening);
  }
};
