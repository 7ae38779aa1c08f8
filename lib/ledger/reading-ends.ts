import { judgeNut } from '../fastening/prevailing';
import { askedEach, askSpecification } from '../job/asks';
import { askedValue } from '../job/asked-value';
import { lookup } from '../job/record';
import type { JobState, Reading } from '../job/state';
import {
  askOf,
  fastenerName,
  fastenerOf,
  stepOf,
  type Fastener,
  type FastenerGroup,
  type Pass,
  type Revision,
  type ValueAsk,
} from '../procedure';
import { wasDone } from './find-step';
import type { LooseEnd } from './loose-end';
import { asked, readWords } from './words';

type Measure = 'torque' | 'angle';

const isValue = (ask: { readonly kind: string }): ask is ValueAsk => ask.kind === 'value';

const measureWords = {
  torque: 'torque',
  angle: 'angle',
  prevailing: 'prevailing torque',
} as const;

/** What a value is of: its fastener and measure, or the words of the ask. */
const subject = (revision: Revision, ask: ValueAsk, fastenerId: string | undefined): string => {
  const found = fastenerId === undefined ? undefined : fastenerOf(revision, fastenerId);
  if (found === undefined) return ask.label;
  const name = fastenerName(found.group, found.fastener);
  return ask.of.kind === 'pass' ? `${name}, ${measureWords[ask.of.measure]}` : name;
};

/** What was asked, with what a self-locking nut adds to it. */
const askedFor = (state: JobState, ask: ValueAsk, fastener: string | undefined): string => {
  const { specification, prevailing } = askedValue(state, ask, fastener);
  const figure = asked(specification);
  switch (prevailing?.kind) {
    case undefined:
      return figure;
    case 'added':
      return `${figure}, ${prevailing.explain}`;
    case 'open':
      return `${figure}, and on top what it takes to turn before it seats`;
    case 'unfit':
      return prevailing.explain;
  }
};

/** What was asked of a reading that is not in spec; of a self-locking nut also what to do. */
const askedOf = (state: JobState, ask: ValueAsk, reading: Reading): string => {
  const nut =
    ask.of.kind === 'pass' && ask.of.measure === 'prevailing'
      ? judgeNut(askSpecification(state.revision, ask), reading.canonical, reading.unit)
      : undefined;
  return nut?.message ?? askedFor(state, ask, reading.fastener);
};

const missing = (
  state: JobState,
  step: string,
  ask: ValueAsk,
  fastener: Fastener | undefined,
): LooseEnd => ({
  kind: 'readingMissing',
  key: ['readingMissing', step, ask.id, ...(fastener ? [fastener.id] : [])].join(':'),
  mark: 'missing',
  text: `${subject(state.revision, ask, fastener?.id)}: no reading`,
  detail: askedFor(state, ask, fastener?.id),
  step,
});

/** The readings of an ask that the job lacks. */
const missingOf = (state: JobState, step: string, ask: ValueAsk): readonly LooseEnd[] => {
  const counted = state.readings.filter(
    (reading) => reading.status === 'counted' && reading.step === step && reading.ask === ask.id,
  );
  const each = askedEach(state.revision, ask);
  if (each.length === 0) return counted.length === 0 ? [missing(state, step, ask, undefined)] : [];
  return each
    .filter((fastener) => !counted.some((reading) => reading.fastener === fastener.id))
    .map((fastener) => missing(state, step, ask, fastener));
};

const figures = (pass: Pass): readonly Measure[] => {
  const { tightening } = pass;
  switch (tightening.kind) {
    case 'torque':
      return tightening.torque.kind === 'noFigure' ? [] : ['torque'];
    case 'torqueAngle':
      return ['torque', 'angle'];
    case 'byFeel':
      return [];
  }
};

/** A final pass that was tightened, with a figure in the sheet that no reading shows. */
const unproven = (state: JobState, group: FastenerGroup, pass: Pass): readonly LooseEnd[] => {
  const tightened =
    wasDone(state, (e) => e.kind === 'tightens' && e.group === group.id && e.pass === pass.id) &&
    group.fasteners.some(({ id }) => lookup(state.fasteners, id)?.stage === 'final');
  if (!tightened) return [];
  const asks = state.revision.steps.flatMap((step) =>
    step.asks
      .filter(isValue)
      .filter(({ of }) => of.kind === 'pass' && of.group === group.id && of.pass === pass.id)
      .map((ask) => ({ step: step.id, ask })),
  );
  if (asks.length > 0) return asks.flatMap(({ step, ask }) => missingOf(state, step, ask));
  return figures(pass).map((measure) => ({
    kind: 'readingMissing',
    key: `readingMissing:${group.id}:${pass.id}:${measure}`,
    mark: 'missing',
    text: `${group.name}, ${measure}: no reading`,
  }));
};

/** What a step that was left out would have measured. */
const leftOut = (state: JobState): readonly LooseEnd[] =>
  state.revision.steps
    .filter(({ id }) => lookup(state.steps, id)?.status === 'leftOut')
    .flatMap((step) => step.asks.filter(isValue).flatMap((ask) => missingOf(state, step.id, ask)));

const accepted = (state: JobState, reading: Reading): boolean =>
  state.deviations.some(
    (deviation) =>
      deviation.kind === 'outOfSpec' &&
      deviation.reading === reading.id &&
      deviation.decision !== undefined &&
      deviation.decision.word !== 'rework',
  );

/** As read, in the middle of a sentence. */
const wasRead = (reading: Reading): string =>
  reading.adapter === undefined ? readWords(reading) : `${readWords(reading)},`;

const doubtful = (state: JobState, reading: Reading): readonly LooseEnd[] => {
  const step = stepOf(state.revision, reading.step);
  const ask = step && askOf(step, reading.ask);
  if (reading.status !== 'counted' || ask?.kind !== 'value') return [];
  const said = `${subject(state.revision, ask, reading.fastener)}: ${wasRead(reading)}`;
  const common = {
    mark: reading.id,
    detail: askedOf(state, ask, reading),
    step: reading.step,
  };
  const key = [reading.step, reading.ask, ...(reading.fastener ? [reading.fastener] : [])].join(
    ':',
  );
  if (reading.verdict === 'outOfSpec' && !accepted(state, reading))
    return [
      {
        ...common,
        kind: 'readingOutOfSpec',
        key: `readingOutOfSpec:${key}`,
        text: `${said} is out of spec`,
      },
    ];
  if (reading.verdict === 'notProvable')
    return [
      {
        ...common,
        kind: 'readingNotProvable',
        key: `readingNotProvable:${key}`,
        text: `${said} cannot be proven in spec`,
      },
    ];
  return [];
};

/** Readings that are missing, out of spec and not accepted, or not provable. */
export const readingEnds = (state: JobState): readonly LooseEnd[] => {
  const all = [
    ...state.revision.groups.flatMap((group) =>
      group.passes
        .filter((pass) => pass.stage === 'final' && figures(pass).length > 0)
        .flatMap((pass) => unproven(state, group, pass)),
    ),
    ...leftOut(state),
    ...state.readings.flatMap((reading) => doubtful(state, reading)),
  ];
  return [...new Map(all.map((end) => [end.key, end])).values()];
};
