import { subjectOf } from '../handover';
import type { Happening, JobState, Reason } from '../job';
import { readWords } from '../ledger/words';
import { askOf, partOf, stepOf } from '../procedure';
import { unreachable } from '../result';
import type { Kind } from './kind';

type AnswerGiven = Extract<Happening, { type: 'answerGiven' }>;

/** What an event says itself, in plain words. People are ids here, so that whoever shows it decides on the names. */
export interface Words {
  readonly what: string;
  readonly kinds: readonly Kind[];
  /** The step that it is about. */
  readonly step?: string;
  /** A person with whom `what` ends. */
  readonly whom?: string;
  readonly reason?: Reason | undefined;
  readonly details?: readonly string[];
  /** The tool that was read. */
  readonly tool?: string;
}

/** `before` and `after` the event; the same for an opening. */
export interface Around {
  readonly before: JobState;
  readonly after: JobState;
}

/** A value, what it was read of, and the tool. */
export const readingWords = ({ after }: Around, id: string, step: string): Words => {
  const reading = after.readings.findLast((one) => one.id === id);
  if (reading === undefined) return { what: 'Reading', kinds: ['readings'], step };
  const found = stepOf(after.revision, step);
  const ask = found && askOf(found, reading.ask);
  return {
    what: `${subjectOf(after, reading)}: ${readWords(reading)}`,
    kinds: ask?.kind === 'value' && ask.of.kind === 'fluid' ? ['readings', 'fluids'] : ['readings'],
    step,
    ...(reading.tool === undefined ? {} : { tool: reading.tool.id }),
  };
};

/** What was counted, chosen or checked. */
export const answerWords = (
  { after }: Around,
  { step, ask: id, answer }: Pick<AnswerGiven, 'step' | 'ask' | 'answer'>,
): Words => {
  const found = stepOf(after.revision, step);
  const ask = found && askOf(found, id);
  const label = ask?.label ?? 'Answer';
  switch (answer.kind) {
    case 'count': {
      const wanted = ask?.kind === 'count' ? ` of ${ask.expected}` : '';
      return { what: `${label}: ${answer.count}${wanted}`, kinds: ['readings'], step };
    }
    case 'check':
      return {
        what: `${label}: ${answer.passed ? 'passed' : 'failed'}`,
        kinds: ['readings'],
        step,
      };
    case 'choice': {
      const part = ask?.kind === 'choice' ? partOf(after.revision, ask.part)?.name : undefined;
      const chosen = answer.option === 'reused' ? 'used again' : 'replaced by a new one';
      return { what: `${part ?? label}: ${chosen}`, kinds: ['parts'], step, reason: answer.reason };
    }
    default:
      return unreachable(answer);
  }
};

/** What was taken back. */
export const withdrawnWords = (around: Around, entry: string): Words => {
  const { readings, answers } = around.after;
  const reading = readings.find(({ id }) => id === entry);
  const answer = answers.find(({ id }) => id === entry);
  const of: Words =
    reading !== undefined
      ? readingWords(around, entry, reading.step)
      : answer !== undefined
        ? answerWords(around, answer)
        : { what: 'an entry', kinds: ['readings'] };
  return {
    what: `Taken back: ${of.what}`,
    kinds: of.kinds,
    ...(of.step === undefined ? {} : { step: of.step }),
  };
};
