import { unreachable } from '../result';
import { lookup } from '../job/record';
import type { Deviation, JobState } from '../job/state';
import type { DeviationKind } from '../job/event';
import {
  askOf,
  fastenerName,
  fastenerOf,
  partOf,
  stepNumber,
  stepOf,
  type Ask,
} from '../procedure';
import type { LooseEnd } from './loose-end';
import { atStep, reasonWords, withUnit } from './words';

/** What failed, in words; nothing for an ask that passed or is no check. */
const failure = (ask: Ask, answer: JobState['answers'][number]['answer']): string | undefined => {
  if (ask.kind === 'check' && answer.kind === 'check' && !answer.passed)
    return `${ask.label}: failed`;
  return ask.kind === 'count' && answer.kind === 'count' && answer.count !== ask.expected
    ? `${ask.label}: ${answer.count} counted, ${ask.expected} expected`
    : undefined;
};

const failed = (state: JobState): readonly LooseEnd[] =>
  state.answers.flatMap((given): LooseEnd[] => {
    const step = stepOf(state.revision, given.step);
    const ask = step && askOf(step, given.ask);
    const text = given.status === 'counted' && ask ? failure(ask, given.answer) : undefined;
    if (text === undefined) return [];
    return [
      {
        kind: 'checkFailed',
        key: `checkFailed:${given.step}:${given.ask}`,
        mark: given.id,
        text,
        ...(ask?.kind === 'check' ? { detail: `Passes when: ${ask.passesWhen}` } : {}),
        step: given.step,
      },
    ];
  });

const notMade = (state: JobState): readonly LooseEnd[] =>
  state.revision.steps
    .filter(({ id }) => lookup(state.steps, id)?.status === 'leftOut')
    .flatMap((step) =>
      step.asks
        .filter((ask) => ask.kind === 'check' || ask.kind === 'count')
        .map((ask) => ({
          kind: 'checkMissing' as const,
          key: `checkMissing:${step.id}:${ask.id}`,
          mark: 'missing',
          text: `${ask.label}: not made`,
          step: step.id,
        })),
    );

/** Checks and counts that failed, or were left out with their step. */
export const checkEnds = (state: JobState): readonly LooseEnd[] => [
  ...failed(state),
  ...notMade(state),
];

/** What was not as the sheet has it, by its kind. */
export const kindWords = (kind: DeviationKind): string => {
  switch (kind) {
    case 'orderChanged':
      return 'Order changed';
    case 'anotherWay':
      return 'Done another way';
    case 'outOfSpec':
      return 'Out of spec';
    case 'missingOrDamaged':
      return 'Missing or damaged';
    case 'reusedAgainstSheet':
      return 'Used again against the sheet';
    case 'leftOut':
      return 'Left out';
    case 'rework':
      return 'Rework';
    default:
      return unreachable(kind);
  }
};

/** The foreman asked for rework, and the step was not done or left out again since. */
const reworkDue = (state: JobState, deviation: Deviation): boolean => {
  if (deviation.decision?.word !== 'rework') return false;
  const step = lookup(state.steps, deviation.step);
  return step?.status !== 'open' && (step?.settledSeq ?? 0) < deviation.decision.seq;
};

const about = (state: JobState, deviation: Deviation): readonly string[] => {
  const fastener =
    deviation.fastener === undefined ? undefined : fastenerOf(state.revision, deviation.fastener);
  const part = deviation.part === undefined ? undefined : partOf(state.revision, deviation.part);
  const reading = state.readings.find(({ id }) => id === deviation.reading);
  return [
    ...(fastener ? [fastenerName(fastener.group, fastener.fastener)] : []),
    ...(part ? [part.name] : []),
    ...(reading ? [withUnit(reading.value, reading.unit)] : []),
  ];
};

/** What was not as the sheet has it: "Out of spec, Cover bolt 3, 14 N·m". */
export const deviationWords = (state: JobState, deviation: Deviation): string =>
  [kindWords(deviation.kind), ...about(state, deviation)].join(', ');

/** Deviations without a foreman's decision, and rework that a foreman asked for and nobody did. */
export const deviationEnds = (state: JobState): readonly LooseEnd[] =>
  state.deviations.flatMap((deviation): LooseEnd[] => {
    const due = reworkDue(state, deviation);
    if (deviation.decision !== undefined && !due) return [];
    const what = deviationWords(state, deviation);
    const detail = reasonWords(due ? deviation.decision?.reason : deviation.reason);
    return [
      {
        kind: 'deviationUndecided',
        key: `deviationUndecided:${deviation.id}`,
        mark: due ? 'rework due' : 'undecided',
        text: due
          ? `Rework asked for at ${atStep(state.revision, deviation.step)}`
          : `${what}, at ${atStep(state.revision, deviation.step)}: undecided`,
        ...(detail === undefined ? {} : { detail }),
        step: deviation.step,
      },
    ];
  });

/** Steps neither done nor left out. */
export const openSteps = (state: JobState): readonly LooseEnd[] =>
  state.revision.steps
    .filter(({ id }) => lookup(state.steps, id)?.status === 'open')
    .map((step) => ({
      kind: 'stepOpen',
      key: `stepOpen:${step.id}`,
      mark: `open ${lookup(state.steps, step.id)?.reopened ?? 0}`,
      text: `Step ${stepNumber(state.revision, step.id)} is open: ${step.title}`,
      step: step.id,
    }));
