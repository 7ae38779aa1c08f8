import { z } from 'zod';
import { judge, type DecisionRule, type Verdict } from '../metrology/verdict';
import { decimalPlaces, formatDecimal, formatQuantity, unitFacts, type Unit } from '../quantity';
import { err, ok, type Result } from '../result';
import { finite, negative, notPositive, outOfDomain, type OutOfDomain } from './domain';
import type { ToleranceInterval } from './specification';

/** A crowfoot or extension on the square of a torque wrench. */
export const adapterSchema = z.object({
  /** Centre of the wrench's square to the hand mark on its grip. */
  wrenchMm: z.number().positive(),
  /** Centre of the square to the centre of the fastener. */
  adapterMm: z.number().nonnegative(),
  /** Between adapter and wrench: 0° straight ahead (longer), 90° square (no change), 180° turned back (shorter). */
  angleDeg: z.number().min(0).max(180),
  /** How well both lengths and the place of the hand are known, ± mm (k = 2). */
  lengthsWithinMm: z.number().nonnegative().optional(),
});
export type Adapter = Readonly<z.infer<typeof adapterSchema>>;

/** Below this part of the wrench's own length a turned-back adapter is not a lever to measure with. */
const SHORTEST_LEVER = 0.25;

/** Fastener torque ÷ set torque: (L + E · cos θ) ÷ L. */
const gain = (adapter: Adapter): Result<number, OutOfDomain> => {
  const { wrenchMm, adapterMm, angleDeg, lengthsWithinMm = 0 } = adapter;
  const outside =
    notPositive({ 'wrench length': wrenchMm }) ??
    negative({ 'adapter length': adapterMm, 'uncertainty of the lengths': lengthsWithinMm });
  if (outside) return err(outside);
  if (!(angleDeg >= 0 && angleDeg <= 180)) {
    return err(outOfDomain('adapter angle', angleDeg, 'between 0° and 180°'));
  }
  const factor = 1 + (adapterMm / wrenchMm) * cosine(angleDeg);
  if (factor < SHORTEST_LEVER) {
    return err(
      outOfDomain('adapter length', adapterMm, 'well below the wrench’s when it is turned back'),
    );
  }
  return finite('ratio of adapter to wrench', factor);
};

/** Exact where it has to be: at 90° nothing changes. */
const cosine = (deg: number): number => (deg === 90 ? 0 : Math.cos((deg * Math.PI) / 180));

export interface AdapterTorque {
  readonly torqueNm: number;
  /** Formula and numbers, for the screen. */
  readonly explain: string;
}

/**
 * What to set on the wrench so that the fastener gets `fastenerNm`: T_set = T · L ÷ (L + E · cos θ).
 * Source: the lever arms; checked against published worked examples. `unit` is for the explanation alone.
 */
export const setTorque = (
  fastenerNm: number,
  adapter: Adapter,
  unit: Unit = 'N.m',
): Result<AdapterTorque, OutOfDomain> => {
  const lever = torqueAndGain(fastenerNm, adapter);
  if (!lever.ok) return lever;
  const set = finite('set torque', fastenerNm / lever.value);
  if (!set.ok) return set;
  return ok({
    torqueNm: set.value,
    explain: `T set = T × L ÷ (L + E × cos θ) = ${worked(fastenerNm, '×', adapter, unit)} = ${shown(set.value, unit)}`,
  });
};

/** What the fastener gets when the wrench is set to, or reads, `setNm`: T = T_set · (L + E · cos θ) ÷ L. */
export const torqueAtFastener = (
  setNm: number,
  adapter: Adapter,
  unit: Unit = 'N.m',
): Result<AdapterTorque, OutOfDomain> => {
  const lever = torqueAndGain(setNm, adapter);
  if (!lever.ok) return lever;
  const torque = finite('torque at the fastener', setNm * lever.value);
  if (!torque.ok) return torque;
  return ok({
    torqueNm: torque.value,
    explain: `T = T set × (L + E × cos θ) ÷ L = ${worked(setNm, '÷', adapter, unit)} = ${shown(torque.value, unit)}`,
  });
};

/** The fastener's window as the wrench shows it, N·m: each limit by the lever. */
export const windowOnWrench = (
  { lower, upper, target }: ToleranceInterval,
  adapter: Adapter,
): Result<ToleranceInterval, OutOfDomain> => {
  const lever = gain(adapter);
  if (!lever.ok) return lever;
  return ok({
    ...(lower === undefined ? {} : { lower: lower / lever.value }),
    ...(upper === undefined ? {} : { upper: upper / lever.value }),
    ...(target === undefined ? {} : { target: target / lever.value }),
  });
};

export interface JudgedAtFastener extends AdapterTorque {
  readonly verdict: Verdict;
  /** Of the torque at the fastener, k = 2, N·m: the tool's and that of the lengths. */
  readonly expandedUncertaintyNm?: number;
}

/**
 * Judges a wrench reading by the torque that it means at the fastener. The tool's expanded uncertainty grows with
 * the lever; what the lengths are not known by comes on top (root sum of squares, JCGM 100).
 */
export const judgeAtFastener = (
  setNm: number,
  adapter: Adapter,
  interval: ToleranceInterval | undefined,
  toolUncertaintyNm: number | undefined,
  rule: DecisionRule,
): Result<JudgedAtFastener, OutOfDomain> => {
  const lever = torqueAndGain(setNm, adapter);
  if (!lever.ok) return lever;
  const torque = torqueAtFastener(setNm, adapter);
  if (!torque.ok) return torque;
  if (toolUncertaintyNm === undefined) {
    return ok({
      ...torque.value,
      verdict: judge(torque.value.torqueNm, interval, undefined, rule),
    });
  }
  const outside = negative({ 'uncertainty of the tool': toolUncertaintyNm });
  if (outside) return err(outside);
  const { wrenchMm, adapterMm, angleDeg, lengthsWithinMm = 0 } = adapter;
  const perMm = (setNm * cosine(angleDeg)) / wrenchMm;
  const expanded = finite(
    'uncertainty at the fastener',
    Math.hypot(
      toolUncertaintyNm * lever.value,
      perMm * lengthsWithinMm,
      ((perMm * adapterMm) / wrenchMm) * lengthsWithinMm,
    ),
  );
  if (!expanded.ok) return expanded;
  return ok({
    ...torque.value,
    verdict: judge(torque.value.torqueNm, interval, expanded.value, rule),
    expandedUncertaintyNm: expanded.value,
  });
};

const torqueAndGain = (torqueNm: number, adapter: Adapter): Result<number, OutOfDomain> => {
  const outside = negative({ torque: torqueNm });
  return outside ? err(outside) : gain(adapter);
};

const plain = (value: number): string => formatDecimal(value, decimalPlaces(value, 2));

const shown = (torqueNm: number, unit: Unit): string => formatQuantity(torqueNm, unit);

/** "80 N·m × 400 mm ÷ (400 mm + 50 mm × cos 0°)" and the way back. */
const worked = (torqueNm: number, sign: '×' | '÷', adapter: Adapter, unit: Unit): string => {
  const length = `${plain(adapter.wrenchMm)} ${unitFacts.mm.symbol}`;
  const lever = `(${length} + ${plain(adapter.adapterMm)} mm × cos ${plain(adapter.angleDeg)}°)`;
  return sign === '×'
    ? `${shown(torqueNm, unit)} × ${length} ÷ ${lever}`
    : `${shown(torqueNm, unit)} × ${lever} ÷ ${length}`;
};
