import { err, type Result } from '../result';
import { finite, notPositive, type OutOfDomain } from './domain';
import type { Strength } from './strength';
import type { Thread } from './thread';

/** What a part of aluminium stands, MPa. */
export interface Aluminium {
  readonly name: string;
  /** Pressure under a head from which it creeps. */
  readonly bearingMpa: number;
  /** Shear strength of its threads. */
  readonly shearMpa: number;
}

/** Round figures on the low side, from memory; a casting's own data sheet goes before them. */
export const aluminium = {
  cast: { name: 'cast aluminium', bearingMpa: 200, shearMpa: 120 },
  wrought: { name: 'wrought aluminium', bearingMpa: 350, shearMpa: 200 },
} as const satisfies Readonly<Record<string, Aluminium>>;

/** Loss by the bell-mouthing of the softer nut thread; the least that the standard's curve gives (C3). */
const BELL_MOUTH = 0.897;
/** Bolts come out up to a fifth stronger than their class promises. */
const STRONGER = 1.2;

/**
 * How far a bolt must be screwed in so that it breaks before its threads in the softer part strip, mm.
 *
 * VDI 2230 short form, from memory: (1.2 · Rm · As) ÷ (0.897 · τB · π · d · (P/2 + (d − D2) · tan 30°) ÷ P), plus one
 * pitch for the first turn that does not bear. Assumes a basic profile (D2 = d2), a blind or thick-walled boss, and a
 * steady load.
 */
export const requiredEngagementMm = (
  thread: Thread,
  strength: Strength,
  part: Aluminium,
): Result<number, OutOfDomain> => {
  const outside = notPositive({
    'tensile strength': strength.tensileMpa,
    'shear strength': part.shearMpa,
  });
  if (outside) return err(outside);
  return finite(
    'engaged length',
    (STRONGER * strength.tensileMpa * thread.stressAreaMm2) / strippingPerMm(thread, part) +
      thread.pitchMm,
  );
};

/** The load at which the threads in the part strip over this engaged length, N; the first pitch does not bear. */
export const strippingLoadN = (
  thread: Thread,
  engagedMm: number,
  part: Aluminium,
): Result<number, OutOfDomain> => {
  const outside = notPositive({
    'engaged length': engagedMm,
    'bearing part of the engaged length': engagedMm - thread.pitchMm,
    'shear strength': part.shearMpa,
  });
  if (outside) return err(outside);
  return finite('stripping load', (engagedMm - thread.pitchMm) * strippingPerMm(thread, part));
};

const strippingPerMm = (thread: Thread, part: Aluminium): number => {
  const { diameterMm, pitchMm, pitchDiameterMm } = thread;
  const share = (pitchMm / 2 + (diameterMm - pitchDiameterMm) / Math.sqrt(3)) / pitchMm;
  return BELL_MOUTH * part.shearMpa * Math.PI * diameterMm * share;
};
