import type { Specification } from '../fastening/specification';
import type { DecisionRule } from '../metrology/verdict';
import {
  groupOf,
  passOf,
  stepOf,
  type Ask,
  type Fastener,
  type FastenerGroup,
  type Pass,
  type Revision,
  type ValueAsk,
} from '../procedure';
import type { Answer, EntryStatus, JobState, Reading } from './state';

type Measure = Extract<ValueAsk['of'], { kind: 'pass' }>['measure'];

const passFigure = (pass: Pass | undefined, measure: Measure): Specification | undefined => {
  if (measure === 'prevailing') return pass?.prevailing;
  const tightening = pass?.tightening;
  if (tightening?.kind === 'torque') return measure === 'torque' ? tightening.torque : undefined;
  if (tightening?.kind !== 'torqueAngle') return undefined;
  return measure === 'torque' ? tightening.snugTorque : tightening.angle;
};

/** What the sheet says a value must be: its own specification, or that of its tightening pass. */
export const askSpecification = (revision: Revision, ask: ValueAsk): Specification => {
  const { of } = ask;
  if (of.kind !== 'pass') return of.spec;
  const group = groupOf(revision, of.group);
  return (
    passFigure(group && passOf(group, of.pass), of.measure) ?? {
      kind: 'noFigure',
      unit: of.measure === 'angle' ? 'deg' : 'N.m',
    }
  );
};

/** What is measured on a safety-critical group must be proven; everything else is taken as read. */
export const decisionRuleFor = (revision: Revision, ask: ValueAsk): DecisionRule =>
  ask.of.kind === 'pass' && groupOf(revision, ask.of.group)?.safetyCritical === true
    ? 'mustProve'
    : 'simple';

/** Whether an entry stands: shown and not taken back, or counted. */
export const stands = (entry: { readonly status: EntryStatus }): boolean =>
  entry.status === 'provisional' || entry.status === 'counted';

/** The readings and answers of a step that stand. */
export const currentEntries = (
  state: JobState,
  stepId: string,
): { readonly readings: readonly Reading[]; readonly answers: readonly Answer[] } => ({
  readings: state.readings.filter((reading) => reading.step === stepId && stands(reading)),
  answers: state.answers.filter((answer) => answer.step === stepId && stands(answer)),
});

/** The fasteners of which an ask wants one value each; none where one value, or an answer, is enough. */
export const askedEach = (revision: Revision, ask: Ask): readonly Fastener[] =>
  ask.kind === 'value' && ask.of.kind === 'pass' && ask.of.each
    ? (groupOf(revision, ask.of.group)?.fasteners ?? [])
    : [];

/** The group whose fasteners a reading of that ask stands for; none where it is of no tightening pass. */
export const askedGroup = (
  revision: Revision,
  stepId: string,
  askId: string,
): FastenerGroup | undefined => {
  const ask = stepOf(revision, stepId)?.asks.find(({ id }) => id === askId);
  return ask?.kind === 'value' && ask.of.kind === 'pass'
    ? groupOf(revision, ask.of.group)
    : undefined;
};

/** An ask of a step that is not answered yet. */
export interface OpenAsk {
  readonly ask: Ask;
  /** Where it wants one value each: the fasteners still without one, in the order of the sheet. Else empty. */
  readonly fasteners: readonly Fastener[];
}

/** What a step still wants to know, in its own order. Empty for an unknown step. */
export const openAsks = (state: JobState, stepId: string): readonly OpenAsk[] => {
  const { readings, answers } = currentEntries(state, stepId);
  return (stepOf(state.revision, stepId)?.asks ?? []).flatMap((ask): OpenAsk[] => {
    const given = [...readings, ...answers].filter((entry) => entry.ask === ask.id);
    const each = askedEach(state.revision, ask);
    if (each.length === 0) return given.length === 0 ? [{ ask, fasteners: [] }] : [];
    const read = new Set(readings.filter((r) => r.ask === ask.id).map((r) => r.fastener));
    const fasteners = each.filter((fastener) => !read.has(fastener.id));
    return fasteners.length === 0 ? [] : [{ ask, fasteners }];
  });
};
