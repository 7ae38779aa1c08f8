/** What a kiosk says of itself now and then; never stored. */
export interface Presence {
  readonly seenMs: number;
  /** Why nobody can be heard there; absent: somebody can, or it is not meant to listen. */
  readonly cannotBeHeard?: { readonly why: string; readonly sinceMs: number };
}

/** A kiosk says that it is there this often. */
export const presenceEveryMs = 5_000;

/** Several signs in a row are missing: a browser may hold a timer back, a radio link lose a packet. */
export const offlineAfterMs = 35_000;

/**
 * Since when nothing is heard of a bay's kiosk; absent: it is there. One never heard of counts from `watchingSinceMs`,
 * when somebody began to listen for it.
 */
export const offlineSinceMs = (
  presence: Presence | undefined,
  watchingSinceMs: number,
  nowMs: number,
): number | undefined => {
  const seenMs = presence?.seenMs ?? watchingSinceMs;
  return nowMs - seenMs > offlineAfterMs ? seenMs : undefined;
};
