import type { Intent } from './intent';

/** A phrase that stands for an intent with one person only. */
export interface OwnPhrase {
  readonly say: string;
  readonly intent: Intent;
}

/**
 * What is known of the voice of whoever is signed on. It only ever makes the hearing more careful: a level below the
 * shop's own counts for nothing.
 */
export interface PersonalVoice {
  readonly own: readonly OwnPhrase[];
  /** Least confidence in every word of a phrase, and in every word of a number. */
  readonly leastConfidence: number;
  readonly leastNumberConfidence: number;
  /** Number words that were mistaken with this voice: a value that holds one is read back. */
  readonly readBack: readonly string[];
}
