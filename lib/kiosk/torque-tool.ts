import { nominal, specificationQuantity } from '../fastening';
import { askSpecification } from '../job';
import type { JobState } from '../job/state';
import { chooseTool, toolUncertainty, type ToolChoice } from '../metrology';
import type { Step, ValueAsk } from '../procedure';
import type { TorqueTool } from '../shop';

/** The shop's torque tools, and how often each was used since its calibration, by tool id. */
export interface ToolCabinet {
  readonly tools: readonly TorqueTool[];
  readonly cycles: Readonly<Record<string, number>>;
}

/** The tools for a torque that is asked for, the best first, and why not the others; undefined where no torque is asked for. `now` as RFC 3339. */
export const toolsForAsk = (
  job: JobState,
  ask: ValueAsk,
  { tools, cycles }: ToolCabinet,
  now: string,
): ToolChoice | undefined => {
  const spec = askSpecification(job.revision, ask);
  const torqueNm = nominal(spec);
  return ask.of.kind !== 'pass' ||
    specificationQuantity(spec) !== 'torque' ||
    torqueNm === undefined
    ? undefined
    : chooseTool(tools, { torqueNm }, now.slice(0, 10), (id) => cycles[id] ?? 0);
};

/** The tools for the first torque that a step asks for. */
export const toolsForStep = (
  job: JobState,
  step: Step,
  cabinet: ToolCabinet,
  now: string,
): ToolChoice | undefined => {
  for (const ask of step.asks) {
    const choice = ask.kind === 'value' ? toolsForAsk(job, ask, cabinet, now) : undefined;
    if (choice !== undefined) return choice;
  }
  return undefined;
};

/** The best tool for an ask, with how far it may be off at the torque that was read (N·m, k = 2), where that is known. */
export const toolInHand = (
  job: JobState,
  ask: ValueAsk,
  readNm: number,
  cabinet: ToolCabinet,
  now: string,
): { readonly id: string; readonly expandedUncertainty?: number } | undefined => {
  const best = toolsForAsk(job, ask, cabinet, now)?.usable[0]?.tool;
  if (best === undefined) return undefined;
  const off = toolUncertainty(best, readNm);
  return { id: best.id, ...(off.ok ? { expandedUncertainty: off.value.expandedNm } : {}) };
};
