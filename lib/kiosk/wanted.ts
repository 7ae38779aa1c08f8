import { groupOrder, specificationQuantity } from '../fastening';
import { askedEach, askSpecification, currentEntries, openAsks } from '../job';
import type { JobState, Reading } from '../job/state';
import {
  drawingOf,
  fastenerName,
  fastenerOf,
  groupOf,
  stepOf,
  type Ask,
  type Fastener,
  type FastenerGroup,
  type Step,
  type ValueAsk,
} from '../procedure';
import type { Quantity } from '../quantity';

/** One thing that a step wants to know. */
export interface Want {
  readonly ask: Ask;
  /** For asks of every fastener: which one, in the tightening order. */
  readonly fastener?: string;
}

export const currentStep = (job: JobState): Step => {
  const step = stepOf(job.revision, job.currentStep) ?? job.revision.steps[0];
  if (step === undefined) throw new Error('a revision has at least one step');
  return step;
};

export const groupOfAsk = (job: JobState, ask: ValueAsk): FastenerGroup | undefined =>
  ask.of.kind === 'pass' ? groupOf(job.revision, ask.of.group) : undefined;

/** The fasteners of a group in tightening order. */
export const orderedFasteners = (job: JobState, group: FastenerGroup): readonly Fastener[] => {
  const drawing = drawingOf(job.revision, group.drawing);
  if (drawing === undefined) return group.fasteners;
  return groupOrder(group, drawing).order.flatMap((id) =>
    group.fasteners.filter((fastener) => fastener.id === id),
  );
};

const wantsOf = (job: JobState, ask: Ask, fasteners: readonly Fastener[]): readonly Want[] => {
  const group = ask.kind === 'value' ? groupOfAsk(job, ask) : undefined;
  if (fasteners.length === 0 || group === undefined) return [{ ask }];
  return orderedFasteners(job, group)
    .filter((fastener) => fasteners.includes(fastener))
    .map(({ id }) => ({ ask, fastener: id }));
};

/** Everything a step asks, answered or not, fastener by fastener in tightening order. */
export const allWants = (job: JobState, step: Step): readonly Want[] =>
  step.asks.flatMap((ask) => wantsOf(job, ask, askedEach(job.revision, ask)));

/** What the step still wants. Empty for a step that is done or only needs acknowledging. */
export const openWants = (job: JobState, step: Step): readonly Want[] =>
  job.steps[step.id]?.status === 'open'
    ? openAsks(job, step.id).flatMap(({ ask, fasteners }) => wantsOf(job, ask, fasteners))
    : [];

/** The reading that stands for a want while its step is open. */
export const standingReading = (job: JobState, step: string, want: Want): Reading | undefined =>
  currentEntries(job, step).readings.findLast(
    (reading) => reading.ask === want.ask.id && reading.fastener === want.fastener,
  );

/** The reading or answer that stands for a want while its step is open. */
export const standing = (
  job: JobState,
  step: string,
  want: Want,
): { readonly id: string } | undefined =>
  want.ask.kind === 'value'
    ? standingReading(job, step, want)
    : currentEntries(job, step).answers.findLast((answer) => answer.ask === want.ask.id);

export const quantityWanted = (job: JobState, ask: ValueAsk): Quantity =>
  specificationQuantity(askSpecification(job.revision, ask));

/** What a self-locking nut takes to turn before it seats. */
export const isNutReading = (ask: Ask): boolean =>
  ask.kind === 'value' && ask.of.kind === 'pass' && ask.of.measure === 'prevailing';

/** "Cover bolt 3", "Cover nut 3, prevailing torque", or the ask's own words. */
export const wantLabel = (job: JobState, want: Want): string => {
  const found = want.fastener === undefined ? undefined : fastenerOf(job.revision, want.fastener);
  if (found === undefined) return want.ask.label;
  const name = fastenerName(found.group, found.fastener);
  return isNutReading(want.ask) ? `${name}, prevailing torque` : name;
};
