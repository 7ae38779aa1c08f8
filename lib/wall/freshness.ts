import { beatEveryMs } from './message';

/** Two signs of life are missing, and a bit: the stream is taken for dead and begun anew. */
export const stalledAfterMs = 2 * beatEveryMs + 3_000;

/** From here on the wall itself says that it shows the past. */
export const staleAfterMs = stalledAfterMs;

export interface Freshness {
  readonly ageMs: number;
  readonly stale: boolean;
}

/**
 * How old what the wall shows is. By instants alone: a timer that a browser holds back makes it late to say so, never
 * wrong. A clock that was set back makes nothing younger than new.
 */
export const freshness = (heardAtMs: number | undefined, nowMs: number): Freshness | undefined => {
  if (heardAtMs === undefined) return undefined;
  const ageMs = Math.max(0, nowMs - heardAtMs);
  return { ageMs, stale: ageMs > staleAfterMs };
};

const longestPauseMs = 15_000;

/** How long to wait before the stream is begun again, after so many tries in a row without a message. */
export const pauseBeforeMs = (tries: number): number =>
  Math.min(longestPauseMs, 500 * 2 ** Math.min(tries, 10));
