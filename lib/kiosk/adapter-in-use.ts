import {
  nominal,
  setTorque,
  specificationQuantity,
  toleranceInterval,
  windowOnWrench,
  type Specification,
  type ToleranceInterval,
} from '../fastening';
import type { JobState } from '../job/state';
import { admitTool, type UsableTool, type ToolRefusal } from '../metrology';
import { groupOf, passOf } from '../procedure';
import type { Result } from '../result';
import { show } from './happen';
import type { AdapterInUse, KioskState, KioskStep, Via } from './state';
import type { ToolCabinet } from './torque-tool';
import { currentStep } from './wanted';

/** Whether the current step sets or reads a torque on a fastener, so that an adapter may be on the wrench. */
export const takesTorque = (job: JobState): boolean => {
  const step = currentStep(job);
  const asked = step.asks.some(
    (ask) => ask.kind === 'value' && ask.of.kind === 'pass' && ask.of.measure !== 'angle',
  );
  const silent = step.effects.some((effect) => {
    if (effect.kind !== 'tightens') return false;
    const group = groupOf(job.revision, effect.group);
    const kind = group && passOf(group, effect.pass)?.tightening.kind;
    return kind === 'torque' || kind === 'torqueAngle';
  });
  return asked || silent;
};

/** What to set on the wrench for a specification, with an adapter on it. */
export interface SetOnWrench {
  readonly name: string;
  /** What is aimed at on the wrench, N·m. */
  readonly torqueNm: number;
  /** What is accepted on the wrench, N·m. */
  readonly window: ToleranceInterval;
  /** Formula, lengths and angle. */
  readonly explain: string;
}

/** Nothing where the specification is no torque or has no figure, or the adapter is no lever to measure with. */
export const setOnWrench = (
  specification: Specification,
  inUse: AdapterInUse | undefined,
): SetOnWrench | undefined => {
  const interval = toleranceInterval(specification);
  const aimNm = nominal(specification);
  if (inUse === undefined || interval === undefined || aimNm === undefined) return undefined;
  if (specificationQuantity(specification) !== 'torque') return undefined;
  const set = setTorque(aimNm, inUse.adapter, specification.unit);
  const window = windowOnWrench(interval, inUse.adapter);
  return set.ok && window.ok ? { name: inUse.name, ...set.value, window: window.value } : undefined;
};

/** A wrench of the shop with that adapter on it: what to set on it for a torque at the fastener, and whether it may be used. */
export interface WrenchForAdapter {
  readonly id: string;
  readonly name: string;
  readonly lengthMm: number;
  readonly setNm: number;
  readonly admitted: Result<UsableTool, ToolRefusal>;
}

/** The shop's wrenches whose length is known, those that may be used first, the smallest uncertainty before. */
export const wrenchesForAdapter = (
  fastenerNm: number,
  adapter: Omit<AdapterInUse['adapter'], 'wrenchMm'>,
  driveIn: AdapterInUse['driveIn'],
  { tools, cycles }: ToolCabinet,
  now: string,
): readonly WrenchForAdapter[] =>
  tools
    .flatMap((tool): readonly WrenchForAdapter[] => {
      const { id, name, effectiveLengthMm: lengthMm } = tool;
      if (lengthMm === undefined) return [];
      const set = setTorque(fastenerNm, { ...adapter, wrenchMm: lengthMm });
      if (!set.ok) return [];
      const setNm = set.value.torqueNm;
      const need = { torqueNm: setNm, ...(driveIn === undefined ? {} : { drive: driveIn }) };
      const admitted = admitTool(tool, need, { on: now.slice(0, 10), cycles: cycles[id] ?? 0 });
      return [{ id, name, lengthMm, setNm, admitted }];
    })
    .sort((a, b) => offNm(a) - offNm(b));

const offNm = ({ admitted }: WrenchForAdapter): number =>
  admitted.ok ? admitted.value.uncertainty.expandedNm : Number.MAX_VALUE;

/** Takes an adapter into use for this step, or none. Nothing is stored before a value is read with it. */
export const putAdapter = (
  state: KioskState,
  inUse: AdapterInUse | undefined,
  via: Via,
): KioskStep => {
  const { adapter: _before, ...rest } = state;
  if (state.question !== undefined) return { state, effects: [] };
  return inUse === undefined
    ? show({ ...rest, view: 'step' }, via, { tone: 'plain', text: 'No adapter on the wrench' })
    : show({ ...rest, view: 'step', adapter: inUse }, via, {
        tone: 'plain',
        text: 'Adapter on: give the wrench’s own value',
      });
};

/** An adapter is forgotten with its step. */
export const forgetAdapter = (before: KioskState, after: KioskState): KioskState => {
  if (after.adapter === undefined || before.job.currentStep === after.job.currentStep) return after;
  const { adapter: _gone, ...rest } = after;
  return rest;
};
