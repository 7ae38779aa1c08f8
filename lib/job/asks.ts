import { toleranceInterval, type Specification } from '../fastening/specification';
import { judge, type DecisionRule, type Verdict } from '../metrology/verdict';
import {
  groupOf,
  passOf,
  stepOf,
  type Ask,
  type Fastener,
  type FastenerGroup,
  type Revision,
  type ValueAsk,
} from '../procedure';
import type { Answer, EntryStatus, JobState, Reading } from './state';

const passSpecification = (
  group: FastenerGroup | undefined,
  passId: string,
  measure: 'torque' | 'angle',
): Specification => {
  const tightening = group && passOf(group, passId)?.tightening;
  if (tightening?.kind === 'torque' && measure === 'torque') return tightening.torque;
  if (tightening?.kind === 'torqueAngle')
    return measure === 'torque' ? tightening.snugTorque : tightening.angle;
  return { kind: 'noFigure', unit: measure === 'torque' ? 'N.m' : 'deg' };
};

/** What a value must be: its own specification, or that of its tightening pass. */
export const askSpecification = (revision: Revision, ask: ValueAsk): Specification =>
  ask.of.kind === 'pass'
    ? passSpecification(groupOf(revision, ask.of.group), ask.of.pass, ask.of.measure)
    : ask.of.spec;

/** Torque and angle of a safety-critical group must be proven; everything else is taken as read. */
export const decisionRuleFor = (revision: Revision, ask: ValueAsk): DecisionRule =>
  ask.of.kind === 'pass' && groupOf(revision, ask.of.group)?.safetyCritical === true
    ? 'mustProve'
    : 'simple';

/** Judges a value in the canonical unit of its ask, with its expanded uncertainty (k = 2, same unit) where known. */
export const verdictFor = (
  revision: Revision,
  ask: ValueAsk,
  canonical: number,
  expandedUncertainty?: number,
): Verdict =>
  judge(
    canonical,
    toleranceInterval(askSpecification(revision, ask)),
    expandedUncertainty,
    decisionRuleFor(revision, ask),
  );

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
