import { nominal, specificationQuantity } from '../fastening';
import { askedValue } from '../job';
import type { JobState } from '../job/state';
import { chooseTool, toolUncertainty, type ToolChoice } from '../metrology';
import type { Step, ValueAsk } from '../procedure';
import type { TorqueTool } from '../shop';
import { openWants } from './wanted';

/** The shop's torque tools, and how often each was used since its calibration, by tool id. */
export interface ToolCabinet {
  readonly tools: readonly TorqueTool[];
  readonly cycles: Readonly<Record<string, number>>;
}

/** The tools for a torque that is asked for, the best first, and why not the others; undefined where no torque is asked for. `now` as RFC 3339. */
export const toolsForAsk = (
  job: JobState,
  ask: ValueAsk,
  fastener: string | undefined,
  { tools, cycles }: ToolCabinet,
  now: string,
): ToolChoice | undefined => {
  const spec = askedValue(job, ask, fastener).specification;
  const torqueNm = nominal(spec);
  if (ask.of.kind !== 'pass' || specificationQuantity(spec) !== 'torque' || torqueNm === undefined)
    return undefined;
  // A click wrench only tells that a torque is reached, not how much a nut takes to turn.
  const apt =
    ask.of.measure === 'prevailing' ? tools.filter(({ kind }) => kind !== 'click') : tools;
  return chooseTool(apt, { torqueNm }, now.slice(0, 10), (id) => cycles[id] ?? 0);
};

/** The tools for the first torque that a step tightens to, else for what else it measures as a torque. */
export const toolsForStep = (
  job: JobState,
  step: Step,
  cabinet: ToolCabinet,
  now: string,
): ToolChoice | undefined => {
  const asks = step.asks.filter((ask) => ask.kind === 'value');
  const tightens = asks.filter(({ of }) => of.kind === 'pass' && of.measure === 'torque');
  for (const ask of [...tightens, ...asks]) {
    const next = openWants(job, step).find((want) => want.ask.id === ask.id)?.fastener;
    const choice = toolsForAsk(job, ask, next, cabinet, now);
    if (choice !== undefined) return choice;
  }
  return undefined;
};

/** The best tool for an ask, with how far it may be off at the torque that was read (N·m, k = 2), where that is known. */
export const toolInHand = (
  job: JobState,
  ask: ValueAsk,
  fastener: string | undefined,
  readNm: number,
  cabinet: ToolCabinet,
  now: string,
): { readonly id: string; readonly expandedUncertainty?: number } | undefined => {
  const best = toolsForAsk(job, ask, fastener, cabinet, now)?.usable[0]?.tool;
  if (best === undefined) return undefined;
  const off = toolUncertainty(best, readNm);
  return { id: best.id, ...(off.ok ? { expandedUncertainty: off.value.expandedNm } : {}) };
};
