import { err, type Result } from '../result';
import { hexagonBearing, meanBearingDiameterMm, type Bearing } from './bearing';
import { finite, notPositive, outOfDomain, type OutOfDomain } from './domain';
import type { Strength } from './strength';
import type { Thread } from './thread';

/** Coefficients of friction. */
export interface Friction {
  /** µG, in the thread. */
  readonly thread: number;
  /** µK, under the head or nut. */
  readonly head: number;
}

/** A bolted joint as far as its torque goes. Without a bearing, a plain hexagon head. */
export interface Joint {
  readonly thread: Thread;
  readonly friction: Friction;
  readonly bearing?: Bearing;
}

/**
 * Torque per preload, mm: 0.16 · P + 0.58 · d2 · µG + DKm/2 · µK (VDI 2230, Kellermann and Klein). The first term
 * stretches the bolt, the other two are lost in friction. Valid for 60° threads.
 */
const leverMm = ({ thread, friction, bearing }: Joint): Result<number, OutOfDomain> => {
  const outside = notPositive({
    'friction in the thread': friction.thread,
    'friction under the head': friction.head,
  });
  if (outside) return err(outside);
  if (friction.thread > 1 || friction.head > 1) {
    const most = Math.max(friction.thread, friction.head);
    return err(outOfDomain('friction', most, 'at most 1'));
  }
  const mean = meanBearingDiameterMm(bearing ?? hexagonBearing(thread));
  if (!mean.ok) return mean;
  return finite(
    'lever',
    0.16 * thread.pitchMm +
      0.58 * thread.pitchDiameterMm * friction.thread +
      (mean.value / 2) * friction.head,
  );
};

/**
 * Preload → torque, N·m, by the long form. For one bolt the preload that a torque really gives differs by some
 * ±25 to 35 % (NASA, from memory): a torque is never proof of a clamp load.
 */
export const torqueForPreloadNm = (preloadN: number, joint: Joint): Result<number, OutOfDomain> => {
  const outside = notPositive({ preload: preloadN });
  if (outside) return err(outside);
  const lever = leverMm(joint);
  return lever.ok ? finite('torque', (preloadN * lever.value) / 1000) : lever;
};

/** Torque → preload, N, by the long form; see `torqueForPreloadNm` for how little it says of one bolt. */
export const preloadForTorqueN = (torqueNm: number, joint: Joint): Result<number, OutOfDomain> => {
  const outside = notPositive({ torque: torqueNm });
  if (outside) return err(outside);
  const lever = leverMm(joint);
  return lever.ok ? finite('preload', (torqueNm * 1000) / lever.value) : lever;
};

/** Preload → torque, N·m, by the short form T = K · F · d. K: dry steel 0.20–0.25, oiled 0.15–0.20 (published tables). */
export const torqueByNutFactorNm = (
  preloadN: number,
  nutFactor: number,
  thread: Thread,
): Result<number, OutOfDomain> => {
  const outside = notPositive({ preload: preloadN, 'nut factor': nutFactor });
  if (outside) return err(outside);
  return finite('torque', (nutFactor * preloadN * thread.diameterMm) / 1000);
};

/** Torque → preload, N, by the short form. */
export const preloadByNutFactorN = (
  torqueNm: number,
  nutFactor: number,
  thread: Thread,
): Result<number, OutOfDomain> => {
  const outside = notPositive({ torque: torqueNm, 'nut factor': nutFactor });
  if (outside) return err(outside);
  return finite('preload', (torqueNm * 1000) / (nutFactor * thread.diameterMm));
};

/**
 * The preload at which tension and twist together use 90 % of the yield strength, N (VDI 2230):
 * As · 0.9 · Rp0.2 ÷ √(1 + 3 · (1.5 · d2/ds · (P/(π · d2) + 1.155 · µG))²).
 */
export const assemblyPreloadN = (
  thread: Thread,
  strength: Strength,
  frictionInThread: number,
): Result<number, OutOfDomain> => {
  const outside = notPositive({
    'friction in the thread': frictionInThread,
    'yield strength': strength.yieldMpa,
  });
  if (outside) return err(outside);
  const { pitchDiameterMm, stressDiameterMm, pitchMm, stressAreaMm2 } = thread;
  const twist =
    1.5 *
    (pitchDiameterMm / stressDiameterMm) *
    (pitchMm / (Math.PI * pitchDiameterMm) + 1.155 * frictionInThread);
  return finite(
    'preload',
    (stressAreaMm2 * 0.9 * strength.yieldMpa) / Math.sqrt(1 + 3 * twist ** 2),
  );
};
