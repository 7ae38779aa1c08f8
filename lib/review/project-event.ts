import {
  askedValue,
  spentMs,
  type Deviation,
  type Happening,
  type JobEvent,
  type JobState,
  type Reading,
  type Reason,
} from '../job';
import { toleranceInterval } from '../fastening/specification';
import { askOf, stepOf } from '../procedure';
import { fromCanonical } from '../quantity';
import { knownLimits, limitsInUnit, type ValueLimits } from './limits';
import { hearingWrites } from './project-hearing';
import type { DeviationWrite, ReviewWrite, Words } from './rows';

type Happened<T extends Happening['type']> = Extract<Happening, { type: T }>;

const common = (after: JobState, event: JobEvent) => ({
  job: after.job,
  seq: event.seq,
  atMs: Date.parse(event.at),
  bay: after.bay,
  procedure: after.revision.procedure,
  revision: after.revision.revision,
  actor: event.actor,
  role: event.role,
});

const heardOf = ({ input }: Pick<JobEvent, 'input'>): Words | undefined =>
  input.by === 'voice'
    ? {
        text: input.said,
        spoken: true,
        confidence: input.confidence,
        ...(input.unsure === undefined ? {} : { unsure: input.unsure }),
      }
    : undefined;

/** A reason with how it was given, where it is the event's own. */
const wordsOf = ({ text, clip }: Reason, event?: JobEvent): Words => {
  const heard = event === undefined ? undefined : heardOf(event);
  const own = heard !== undefined && heard.text === text ? heard : undefined;
  return {
    ...(own ?? { spoken: clip !== undefined }),
    ...(text === undefined ? {} : { text }),
    ...(clip === undefined ? {} : { clip }),
  };
};

const limitsOf = (
  job: JobState,
  reading: Reading,
): { readonly unit: Reading['unit']; readonly limits: ValueLimits } | undefined => {
  const step = stepOf(job.revision, reading.step);
  const ask = step && askOf(step, reading.ask);
  if (ask?.kind !== 'value') return undefined;
  const { specification } = askedValue(job, ask, reading.fastener);
  return { unit: specification.unit, limits: knownLimits(toleranceInterval(specification) ?? {}) };
};

/** The readings that count from this event on. */
const counted = (before: JobState, after: JobState, event: JobEvent): readonly ReviewWrite[] => {
  const provisional = new Set(
    before.readings.flatMap(({ id, status }) => (status === 'provisional' ? [id] : [])),
  );
  return after.readings
    .filter(({ id, status }) => status === 'counted' && provisional.has(id))
    .map((reading) => ({
      kind: 'reading',
      row: {
        ...common(after, event),
        seq: reading.seq,
        atMs: Date.parse(reading.at),
        actor: reading.actor,
        step: reading.step,
        ask: reading.ask,
        fastener: reading.fastener ?? '',
        value: reading.canonical,
        ...limitsOf(before, reading)?.limits,
        verdict: reading.verdict,
        ...(reading.tool === undefined ? {} : { tool: reading.tool.id }),
      },
    }));
};

const readingOf = (before: JobState, { reading }: Deviation): Reading | undefined =>
  reading === undefined ? undefined : before.readings.find(({ id }) => id === reading);

const measuredOf = (
  before: JobState,
  reading: Reading,
): Pick<DeviationWrite['facts'], 'measured' | 'tool'> => {
  const asked = limitsOf(before, reading);
  const heard = heardOf(reading);
  const unit = asked?.unit ?? reading.unit;
  return {
    measured: {
      value: fromCanonical(reading.canonical, unit),
      unit,
      ...limitsInUnit(asked?.limits ?? {}, unit),
      verdict: reading.verdict,
      ...(heard === undefined ? {} : { heard }),
    },
    ...(reading.tool === undefined ? {} : { tool: reading.tool.id }),
  };
};

const notedRow = (
  before: JobState,
  after: JobState,
  event: JobEvent,
  deviation: Deviation,
): DeviationWrite => {
  const { id, kind, step, part, fastener, reason } = deviation;
  const reading = readingOf(before, deviation);
  return {
    ...common(after, event),
    step,
    id,
    kind,
    ...(fastener === undefined ? {} : { fastener }),
    ...(reading === undefined ? {} : { ask: reading.ask }),
    facts: {
      ...(part === undefined ? {} : { part }),
      ...(reading === undefined ? {} : measuredOf(before, reading)),
      ...(reason === undefined ? {} : { why: wordsOf(reason, event) }),
    },
  };
};

const noted = (before: JobState, after: JobState, event: JobEvent): readonly ReviewWrite[] =>
  after.deviations
    .slice(before.deviations.length)
    .map((one) => ({ kind: 'deviation', row: notedRow(before, after, event, one) }));

const followed = (
  before: JobState,
  event: JobEvent,
  step: string,
  change: Pick<Extract<ReviewWrite, { kind: 'followed' }>, 'from' | 'to'>,
): readonly ReviewWrite[] =>
  (before.steps[step]?.reopened ?? 0) === 0
    ? []
    : [
        {
          kind: 'followed',
          job: before.job,
          step,
          ...change,
          spentMs: spentMs(before, step, event.at),
        },
      ];

const stepDone = (
  before: JobState,
  after: JobState,
  event: JobEvent,
  { step }: Happened<'stepDone'>,
): readonly ReviewWrite[] => [
  ...counted(before, after, event),
  ...((before.steps[step]?.reopened ?? 0) > 0
    ? []
    : [
        {
          kind: 'step' as const,
          row: {
            ...common(after, event),
            step,
            minutes: spentMs(before, step, event.at) / 60_000,
          },
        },
      ]),
  ...followed(before, event, step, { from: 'stillOpen', to: 'doneAgain' }),
];

const reopened = (
  before: JobState,
  after: JobState,
  event: JobEvent,
  { step, reason }: Happened<'stepReopened'>,
): readonly ReviewWrite[] => {
  const sentBack = before.deviations.findLast(
    (one) => one.step === step && one.decision?.word === 'rework',
  );
  const settled = (state: JobState): number =>
    Object.values(state.steps).filter(({ status }) => status !== 'open').length;
  return [
    ...followed(before, event, step, { from: 'doneAgain', to: 'reopenedAgain' }),
    {
      kind: 'rework',
      row: {
        ...common(after, event),
        step,
        facts: {
          why: wordsOf(reason, event),
          ...(sentBack === undefined ? {} : { sentBack: sentBack.kind }),
          steps: settled(before) - settled(after),
        },
        spentBeforeMs: spentMs(before, step, event.at),
      },
    },
  ];
};

const writesOf = (before: JobState, after: JobState, event: JobEvent): readonly ReviewWrite[] => {
  const { happening } = event;
  switch (happening.type) {
    case 'stepDone':
      return stepDone(before, after, event, happening);
    case 'stepLeftOut':
      return followed(before, event, happening.step, { from: 'stillOpen', to: 'leftOut' });
    case 'stepReopened':
      return reopened(before, after, event, happening);
    case 'deviationDecided':
      return [
        {
          kind: 'decided',
          job: after.job,
          id: happening.deviation,
          word: happening.decision,
          decided: { by: event.actor, why: wordsOf(happening.reason, event) },
        },
      ];
    case 'jobHeld':
      return [
        {
          kind: 'hold',
          row: {
            ...common(after, event),
            step: after.currentStep,
            reason: (happening.reason.text ?? '').slice(0, 80),
            why: wordsOf(happening.reason, event),
          },
        },
      ];
    case 'jobResumed':
      return [{ kind: 'resumed', job: after.job, atMs: Date.parse(event.at) }];
    default:
      return [];
  }
};

/**
 * What one event writes for the review; `before` is absent for the opening. Pure, and of one job alone: writing the
 * same events in their order always makes the same rows, whether as they come or all at once.
 */
export const projectEvent = (
  before: JobState | undefined,
  after: JobState,
  event: JobEvent,
): readonly ReviewWrite[] => [
  ...(before === undefined
    ? [{ kind: 'job' as const, row: common(after, event) }]
    : [...noted(before, after, event), ...writesOf(before, after, event)]),
  ...hearingWrites(before, after, event),
];
