import { err, ok, type Result } from '../result';
import { notPositive, outOfDomain, type OutOfDomain } from './domain';

export type ThreadSystem = 'metric' | 'unified';

/** A 60° screw thread and its geometry, mm and mm². Made by `parseThread` or `threadOf` alone. */
export interface Thread {
  readonly system: ThreadSystem;
  /** As it is written: "M8", "M8x1", "3/8-16". */
  readonly designation: string;
  /** `other`: neither the standard coarse pitch nor a finer one. */
  readonly series: 'coarse' | 'fine' | 'other';
  readonly diameterMm: number;
  readonly pitchMm: number;
  /** d2, half-way up the flanks. */
  readonly pitchDiameterMm: number;
  /** d3, the core of the bolt. */
  readonly minorDiameterMm: number;
  /** D1, the bore of the nut. */
  readonly boreDiameterMm: number;
  /** ds, of the cylinder that is as strong as the thread: the mean of d2 and d3. */
  readonly stressDiameterMm: number;
  /** As = π/4 · ds². */
  readonly stressAreaMm2: number;
}

/** Height of the sharp 60° profile, in pitches: √3 ÷ 2. */
const PROFILE = Math.sqrt(3) / 2;

/**
 * Depth of the core below the outside, in profile heights. Metric: 17/12 (ISO 898-1, d3 = d − 1.226869 · P).
 * Unified: 3/2, which gives the stress area of ASME B1.1, π/4 · (d − 0.9743 · P)² (from memory).
 */
const coreDepth: Readonly<Record<ThreadSystem, number>> = { metric: 17 / 12, unified: 3 / 2 };

/** A thread by its sizes in mm; refused where the core would be less than half of the outside. */
export const threadOf = (
  named: Pick<Thread, 'system' | 'designation' | 'series' | 'diameterMm' | 'pitchMm'>,
): Result<Thread, OutOfDomain> => {
  const { system, diameterMm, pitchMm } = named;
  const outside = notPositive({ 'thread diameter': diameterMm, 'thread pitch': pitchMm });
  if (outside) return err(outside);
  if (diameterMm > 1000) {
    return err(outOfDomain('thread diameter', diameterMm, 'at most a metre'));
  }
  const pitchDiameterMm = diameterMm - 0.75 * PROFILE * pitchMm; // ISO 724
  const minorDiameterMm = diameterMm - coreDepth[system] * PROFILE * pitchMm;
  if (minorDiameterMm < diameterMm / 2) {
    return err(outOfDomain('thread pitch', pitchMm, 'finer for this diameter'));
  }
  const stressDiameterMm = (pitchDiameterMm + minorDiameterMm) / 2;
  return ok({
    ...named,
    pitchDiameterMm,
    minorDiameterMm,
    boreDiameterMm: diameterMm - 1.25 * PROFILE * pitchMm, // ISO 724
    stressDiameterMm,
    stressAreaMm2: (Math.PI / 4) * stressDiameterMm ** 2,
  });
};
