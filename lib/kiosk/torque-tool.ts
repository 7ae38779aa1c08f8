import { nominal, setTorque, specificationQuantity } from '../fastening';
import { askedValue } from '../job';
import type { JobState } from '../job/state';
import {
  bestAngleTool,
  chooseTool,
  toolUncertainty,
  type ToolChoice,
  type ToolNeed,
} from '../metrology';
import { groupOf, type Step, type ValueAsk } from '../procedure';
import { torqueUnits } from '../quantity';
import type { ShopAdapter, ShopSettings, TorqueTool } from '../shop';
import type { AdapterInUse } from './state';
import { openWants } from './wanted';

/** The shop's torque tools, and how often each was used since its calibration, by tool id. */
export interface ToolCabinet {
  readonly tools: readonly TorqueTool[];
  readonly cycles: Readonly<Record<string, number>>;
  readonly adapters?: readonly ShopAdapter[];
  readonly settings?: ShopSettings;
}

/** With an adapter the torque is the wrench's own, and the socket's square is the adapter's. */
const needFor = (
  job: JobState,
  ask: ValueAsk,
  torqueNm: number,
  inUse: AdapterInUse | undefined,
): ToolNeed | undefined => {
  const group = ask.of.kind === 'pass' ? groupOf(job.revision, ask.of.group) : undefined;
  const drive = inUse === undefined ? group?.driveIn : inUse.driveIn;
  const set = inUse === undefined ? undefined : setTorque(torqueNm, inUse.adapter);
  if (set?.ok === false) return undefined;
  return {
    torqueNm: set?.value.torqueNm ?? torqueNm,
    ...(drive === undefined ? {} : { drive }),
  };
};

/**
 * The tools for a torque that is asked for, the best first, and why not the others; undefined where no torque is asked
 * for. `now` as RFC 3339. With an adapter on a certain wrench, that wrench alone.
 */
export const toolsForAsk = (
  job: JobState,
  ask: ValueAsk,
  fastener: string | undefined,
  { tools, cycles, settings }: ToolCabinet,
  now: string,
  inUse?: AdapterInUse,
): ToolChoice | undefined => {
  const spec = askedValue(job, ask, fastener).specification;
  const torqueNm = nominal(spec);
  const { of } = ask;
  if (of.kind !== 'pass' || specificationQuantity(spec) !== 'torque' || torqueNm === undefined)
    return undefined;
  // A click wrench only tells that a torque is reached, not how much a nut takes to turn.
  const apt = tools.filter(
    ({ id, kind }) =>
      (of.measure !== 'prevailing' || kind !== 'click') &&
      (inUse?.tool === undefined || inUse.tool === id),
  );
  const need = needFor(job, ask, torqueNm, inUse);
  const sheetUnit = torqueUnits.find((unit) => unit === spec.unit);
  const inSheetUnit =
    settings?.toolsMarkedInSheetUnit === true && sheetUnit !== undefined ? { unit: sheetUnit } : {};
  return need === undefined
    ? undefined
    : chooseTool(apt, { ...need, ...inSheetUnit }, now.slice(0, 10), (id) => cycles[id] ?? 0);
};

/** The tools for the first torque that a step tightens to, else for what else it measures as a torque. */
export const toolsForStep = (
  job: JobState,
  step: Step,
  cabinet: ToolCabinet,
  now: string,
  inUse?: AdapterInUse,
): ToolChoice | undefined => {
  const asks = step.asks.filter((ask) => ask.kind === 'value');
  const tightens = asks.filter(({ of }) => of.kind === 'pass' && of.measure === 'torque');
  for (const ask of [...tightens, ...asks]) {
    const next = openWants(job, step).find((want) => want.ask.id === ask.id)?.fastener;
    const choice = toolsForAsk(job, ask, next, cabinet, now, inUse);
    if (choice !== undefined) return choice;
  }
  return undefined;
};

/** The best tool for an ask, with how far it may be off at what was read (N·m or degrees, k = 2), where that is known. */
export const toolInHand = (
  job: JobState,
  ask: ValueAsk,
  fastener: string | undefined,
  read: number,
  cabinet: ToolCabinet,
  now: string,
  inUse?: AdapterInUse,
): { readonly id: string; readonly expandedUncertainty?: number } | undefined => {
  if (ask.of.kind === 'pass' && ask.of.measure === 'angle') {
    const on = now.slice(0, 10);
    const angle = bestAngleTool(cabinet.tools, on, (id) => cabinet.cycles[id] ?? 0);
    return angle && { id: angle.tool.id, expandedUncertainty: angle.expandedDeg };
  }
  const best = toolsForAsk(job, ask, fastener, cabinet, now, inUse)?.usable[0]?.tool;
  if (best === undefined) return undefined;
  const off = toolUncertainty(best, read);
  return { id: best.id, ...(off.ok ? { expandedUncertainty: off.value.expandedNm } : {}) };
};
