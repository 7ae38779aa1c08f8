import { askedValue, type JobState, type Reading } from '../job';
import type { Verdict } from '../metrology/verdict';
import { askOf, fastenerName, fastenerOf, groupOf, stepOf, type ValueAsk } from '../procedure';
import { readWords } from '../ledger/words';
import { verdictWords } from '../metrology/verdict';
import { askedWords, type Names } from './words';

/** One measured value with what was asked of it. */
export interface MeasuredRow {
  readonly what: string;
  readonly asked: string;
  readonly read: string;
  readonly verdict: Verdict;
  readonly verdictWords: string;
  readonly tool: string;
}

const measureWords = { torque: 'torque', angle: 'angle', prevailing: 'to turn before it seats' };

const whatOf = (state: JobState, ask: ValueAsk, reading: Reading): string => {
  const { of } = ask;
  if (of.kind !== 'pass') return ask.label;
  const one =
    reading.fastener === undefined ? undefined : fastenerOf(state.revision, reading.fastener);
  const name =
    one === undefined
      ? (groupOf(state.revision, of.group)?.name ?? ask.label)
      : fastenerName(one.group, one.fastener);
  return `${name}, ${measureWords[of.measure]}`;
};

const valueAskOf = (state: JobState, { step, ask }: Reading): ValueAsk | undefined => {
  const found = stepOf(state.revision, step);
  const value = found && askOf(found, ask);
  return value?.kind === 'value' ? value : undefined;
};

/** The values that count, in the order of the sheet: those of tightening, or the others that are no volumes. */
export const measuredRows = (
  state: JobState,
  names: Names,
  which: 'pass' | 'other',
): readonly MeasuredRow[] =>
  state.revision.steps.flatMap((step) =>
    state.readings.flatMap((reading): MeasuredRow[] => {
      if (reading.step !== step.id || reading.status !== 'counted') return [];
      const ask = valueAskOf(state, reading);
      if (ask?.of.kind !== which) return [];
      return [
        {
          what: whatOf(state, ask, reading),
          asked: askedWords(askedValue(state, ask, reading.fastener).specification),
          read: readWords(reading),
          verdict: reading.verdict,
          verdictWords: verdictWords[reading.verdict],
          tool: reading.tool === undefined ? 'not named' : names.tool(reading.tool.id),
        },
      ];
    }),
  );

export interface CheckRow {
  readonly what: string;
  readonly outcome: string;
  readonly good: boolean;
}

/** Function checks and counts that count, in the order of the sheet. */
export const checkRows = (state: JobState): readonly CheckRow[] =>
  state.revision.steps.flatMap((step) =>
    step.asks.flatMap((ask): CheckRow[] => {
      const given = state.answers.findLast(
        (answer) => answer.step === step.id && answer.ask === ask.id && answer.status === 'counted',
      )?.answer;
      if (ask.kind === 'check' && given?.kind === 'check')
        return [
          {
            what: `${ask.label} (${ask.passesWhen})`,
            outcome: given.passed ? 'passed' : 'failed',
            good: given.passed,
          },
        ];
      if (ask.kind === 'count' && given?.kind === 'count')
        return [
          {
            what: ask.label,
            outcome: `${given.count} of ${ask.expected}`,
            good: given.count === ask.expected,
          },
        ];
      return [];
    }),
  );
