import type { Happening, JobEvent, Reason } from '../job';
import { kindWords } from '../ledger/step-ends';
import {
  askOf,
  fastenerName,
  fastenerOf,
  groupOf,
  kitItemOf,
  stepNumber,
  stepOf,
  type Revision,
} from '../procedure';
import { unitFacts } from '../quantity';
import { unreachable } from '../result';

const reasonWords = ({ text }: Reason): string => text ?? 'said, not written down';

const stepWords = (revision: Revision, id: string): string =>
  `Step ${stepNumber(revision, id)}, ${stepOf(revision, id)?.title ?? id}`;

const askWords = (revision: Revision, stepId: string, askId: string, fastener?: string): string => {
  const found = fastener === undefined ? undefined : fastenerOf(revision, fastener);
  if (found !== undefined) return fastenerName(found.group, found.fastener);
  const step = stepOf(revision, stepId);
  return (step === undefined ? undefined : askOf(step, askId)?.label) ?? askId;
};

type Given = Extract<Happening, { type: 'answerGiven' }>['answer'];
const answerWords = (answer: Given): string => {
  switch (answer.kind) {
    case 'count':
      return String(answer.count);
    case 'choice':
      return answer.option === 'reused' ? 'used again' : 'replaced';
    case 'check':
      return answer.passed ? 'passed' : 'failed';
    default:
      return unreachable(answer);
  }
};

/** What happened, in one line for people: "Cover bolt 3: 22 N·m". Without who and when. */
export const eventWords = (
  revision: Revision,
  { happening }: Pick<JobEvent, 'happening'>,
): string => {
  switch (happening.type) {
    case 'jobOpened':
      return `Job opened: ${happening.vehicle.plate}`;
    case 'stepBegun':
      return `${stepWords(revision, happening.step)}: begun`;
    case 'readyGiven':
      return `${stepWords(revision, happening.step)}: ready`;
    case 'readingTaken':
      return `${askWords(revision, happening.step, happening.ask, happening.fastener)}: ${happening.value} ${unitFacts[happening.unit].symbol}`;
    case 'answerGiven':
      return `${askWords(revision, happening.step, happening.ask)}: ${answerWords(happening.answer)}`;
    case 'entryWithdrawn':
      return 'An entry was taken back';
    case 'stepDone':
      return `${stepWords(revision, happening.step)}: done`;
    case 'stepLeftOut':
      return `${stepWords(revision, happening.step)}: left out: ${reasonWords(happening.reason)}`;
    case 'stepReopened':
      return `${stepWords(revision, happening.step)}: opened again: ${reasonWords(happening.reason)}`;
    case 'fastenersLaid':
      return `${groupOf(revision, happening.group)?.name ?? happening.group}: laid in ${happening.tray}`;
    case 'kitLeftOver':
      return `${kitItemOf(revision, happening.kitItem)?.name ?? happening.kitItem}: ${happening.count} left over: ${reasonWords(happening.reason)}`;
    case 'deviationNoted':
      return `${kindWords(happening.kind)}: ${reasonWords(happening.reason)}`;
    case 'deviationDecided':
      return `Deviation decided: ${reasonWords(happening.reason)}`;
    case 'looseEndSigned':
      return `Loose end signed: ${reasonWords(happening.reason)}`;
    case 'jobHeld':
      return `On hold: ${reasonWords(happening.reason)}`;
    case 'jobResumed':
      return 'Resumed';
    case 'foremanCalled':
      return 'Foreman called';
    case 'foremanAnswered':
      return 'Foreman answered';
    case 'jobReassigned':
      return `Job moved: ${reasonWords(happening.reason)}`;
    case 'jobClosed':
      return 'Job closed';
    default:
      return unreachable(happening);
  }
};
