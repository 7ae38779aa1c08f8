import type { Verdict } from '../metrology';
import { fromCanonical, type Unit } from '../quantity';
import {
  capability,
  individualsChart,
  seeAll,
  zoneSignals,
  type IndividualsLimits,
  type ZoneSignal,
} from '../statistics';
import { knownLimits, limitsInUnit, type ValueLimits } from './limits';
import {
  enoughForCapability,
  type CapabilityAnswer,
  type Joint,
  type JointPoint,
  type JointSection,
} from './sections';

/** A reading as it was stored; values and limits in the canonical unit. */
export interface StoredReading extends ValueLimits {
  readonly job: string;
  readonly seq: number;
  readonly at: string;
  readonly revision: number;
  readonly value: number;
  readonly verdict: Verdict;
  readonly tool?: string;
}

const capabilityOf = (
  readings: readonly StoredReading[],
  chart: IndividualsLimits | undefined,
  signals: readonly ZoneSignal[],
): CapabilityAnswer => {
  const newest = readings.at(-1);
  if (newest === undefined) return { kind: 'tooFew', points: 0, needs: enoughForCapability };
  const { lower, upper } = newest;
  if (lower === undefined && upper === undefined) return { kind: 'noLimits' };
  if (readings.some((one) => one.lower !== lower || one.upper !== upper))
    return { kind: 'limitsDiffer' };
  const points = readings.length;
  if (points < enoughForCapability || chart === undefined)
    return { kind: 'tooFew', points, needs: enoughForCapability };
  if (signals.length > 0) return { kind: 'unstable', signals: signals.length };
  const seen = seeAll(readings.map(({ value }) => value));
  const answer = seen.ok ? capability(seen.value, knownLimits({ lower, upper })) : seen;
  return answer.ok ? { kind: 'capable', points, capability: answer.value } : { kind: 'noSpread' };
};

/**
 * The chart of a joint from its readings, in the order of time, in the unit of the sheet. The limits of the chart follow
 * from the readings themselves; a capability is given only where none of the zone rules speaks against a stable process.
 */
export const jointSection = (
  joint: Joint,
  unit: Unit,
  readings: readonly StoredReading[],
): JointSection => {
  const values = readings.map(({ value }) => fromCanonical(value, unit));
  const limits = individualsChart(values);
  const chart = limits.ok ? limits.value : undefined;
  const found = chart === undefined ? undefined : zoneSignals(values, chart);
  const signals = found?.ok === true ? found.value : [];
  const newest = readings.at(-1);
  const points = readings.map((reading, at): JointPoint => {
    const { job, seq, revision, verdict, tool } = reading;
    const value = values[at] ?? Number.NaN;
    const before = values[at - 1];
    return {
      job,
      seq,
      at: reading.at,
      revision,
      value,
      ...(before === undefined ? {} : { movingRange: Math.abs(value - before) }),
      verdict,
      ...(tool === undefined ? {} : { tool }),
      rules: signals.filter((signal) => signal.at === at).map(({ rule }) => rule),
    };
  });
  return {
    joint,
    unit,
    ...(newest === undefined ? {} : { limits: limitsInUnit(newest, unit) }),
    points,
    ...(chart === undefined ? {} : { chart }),
    signals,
    capability: capabilityOf(readings, chart, signals),
  };
};
