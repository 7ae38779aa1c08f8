import { groupOrder } from '../fastening';
import { askSpecification } from '../job';
import type { JobState, Reading } from '../job/state';
import type { Ask, FastenerGroup, Step, ValueAsk } from '../procedure';
import { specificationQuantity } from '../fastening/specification';
import type { Quantity } from '../quantity';

/** One thing that a step still wants to know. */
export interface Want {
  readonly ask: Ask;
  /** For asks of every fastener: which one, in the tightening order. */
  readonly fastener?: string;
}

export const currentStep = (job: JobState): Step => {
  const step = job.revision.steps.find(({ id }) => id === job.currentStep) ?? job.revision.steps[0];
  if (step === undefined) throw new Error('a revision has at least one step');
  return step;
};

export const groupOfAsk = (job: JobState, ask: ValueAsk): FastenerGroup | undefined => {
  const { of } = ask;
  return of.kind === 'pass' ? job.revision.groups.find(({ id }) => id === of.group) : undefined;
};

/** The fasteners of a group in tightening order. */
export const orderedFasteners = (job: JobState, group: FastenerGroup) => {
  const drawing = job.revision.drawings.find(({ id }) => id === group.drawing);
  if (drawing === undefined) return group.fasteners;
  const order = groupOrder(group, drawing).order;
  return order.flatMap((id) => group.fasteners.filter((fastener) => fastener.id === id));
};

/** The entry that stands for an ask (and fastener) while its step is open. */
export const standing = (
  job: JobState,
  step: string,
  want: Want,
): { readonly id: string } | undefined => {
  const same = (entry: { step: string; ask: string; status: string }): boolean =>
    entry.step === step && entry.ask === want.ask.id && entry.status === 'provisional';
  return want.ask.kind === 'value'
    ? job.readings.findLast((reading) => same(reading) && reading.fastener === want.fastener)
    : job.answers.findLast(same);
};

export const standingReading = (job: JobState, step: string, want: Want): Reading | undefined =>
  job.readings.find(({ id }) => id === standing(job, step, want)?.id);

/** Everything a step asks, answered or not, fastener by fastener in tightening order. */
export const allWants = (job: JobState, step: Step): readonly Want[] =>
  step.asks.flatMap((ask): readonly Want[] => {
    if (ask.kind !== 'value' || ask.of.kind !== 'pass' || !ask.of.each) return [{ ask }];
    const group = groupOfAsk(job, ask);
    return group === undefined
      ? []
      : orderedFasteners(job, group).map(({ id }) => ({ ask, fastener: id }));
  });

/** What the step still wants. Empty for a step that is done or only needs acknowledging. */
export const openWants = (job: JobState, step: Step): readonly Want[] =>
  job.steps[step.id]?.status === 'open'
    ? allWants(job, step).filter((want) => standing(job, step.id, want) === undefined)
    : [];

export const quantityWanted = (job: JobState, ask: ValueAsk): Quantity =>
  specificationQuantity(askSpecification(job.revision, ask));

/** "Cover bolt 3", or the ask's own words. */
export const wantLabel = (job: JobState, want: Want): string => {
  if (want.ask.kind !== 'value') return want.ask.label;
  const group = groupOfAsk(job, want.ask);
  const fastener = group?.fasteners.find(({ id }) => id === want.fastener);
  return group !== undefined && fastener !== undefined
    ? `${group.name} ${group.noun} ${fastener.label}`
    : want.ask.label;
};
