import { currentEntries, type JobState } from '@/lib/job';
import { allWants, openWants, orderedFasteners } from '@/lib/kiosk';
import { groupOf, type Drawing, type Step } from '@/lib/procedure';
import type { FastenerMarkData, MarkState } from '../step/fastener-mark';

/** The next fastener whose value is wanted: chosen by touch, else the next in the order. */
export const nextFastener = (
  job: JobState,
  step: Step,
  chosen: string | undefined,
): string | undefined => {
  const each = openWants(job, step).filter(({ fastener }) => fastener !== undefined);
  return each.some(({ fastener }) => fastener === chosen) ? chosen : each[0]?.fastener;
};

const markState = (
  job: JobState,
  step: Step,
  fastener: string,
  next: string | undefined,
): MarkState => {
  if (fastener === next) return 'current';
  const reading = currentEntries(job, step.id).readings.findLast(
    (one) => one.fastener === fastener,
  );
  if (reading !== undefined)
    return reading.verdict === 'outOfSpec' || reading.verdict === 'notProvable' ? 'bad' : 'done';
  return allWants(job, step).some((want) => want.fastener === fastener) ? 'waiting' : 'plain';
};

/** Groups whose order is worked through in this step: one value each, or a pass over several fasteners. */
const orderedGroups = (step: Step): readonly string[] =>
  step.effects.flatMap((effect) => (effect.kind === 'tightens' ? [effect.group] : []));

/** The fasteners to mark on the drawing, in tightening order where the step tightens them. */
export const stepMarks = (
  job: JobState,
  step: Step,
  chosen: string | undefined,
): readonly FastenerMarkData[] => {
  const next = nextFastener(job, step, chosen);
  const groups = [...new Set([...step.shows, ...orderedGroups(step)])];
  return groups.flatMap((id) => {
    const group = groupOf(job.revision, id);
    if (group === undefined || group.drawing !== step.drawing) return [];
    const ordered = orderedGroups(step).includes(id) && group.fasteners.length > 1;
    return orderedFasteners(job, group).map((fastener, index) => ({
      fastener: fastener.id,
      label: fastener.label,
      noun: group.noun,
      hole: fastener.hole,
      lengthMm: fastener.lengthMm,
      ordinal: ordered ? index + 1 : undefined,
      state: markState(job, step, fastener.id, next),
    }));
  });
};

export const stepDrawing = (job: JobState, step: Step): Drawing | undefined =>
  job.revision.drawings.find(({ id }) => id === step.drawing);
