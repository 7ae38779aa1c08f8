import type { KindScores } from './kind';

/** What one window of sound was found to be. Times are those of the sound, s. */
export interface SoundObservation {
  readonly startS: number;
  readonly endS: number;
  /** The level that the window holds (`heldDb`), dB re full scale. */
  readonly levelDb: number;
  readonly scores: KindScores;
}

/** A burst must fill so much of a window to count: a dropped spanner does not, a wrench that hammers does. */
const heldShare = 0.3;

/** The level that at least three tenths of the frames reach, dB; of no frames, nothing. */
export const heldDb = (frameLevelsDb: readonly number[]): number | undefined => {
  const falling = [...frameLevelsDb].sort((a, b) => b - a);
  return falling[Math.max(0, Math.ceil(heldShare * falling.length) - 1)];
};
