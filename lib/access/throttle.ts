/**
 * How wrong PINs are slowed down. Each counter lets a few pass, then makes every further try wait twice as long as the
 * one before, up to five minutes, never longer. A try during the wait is turned away unread and does not lengthen it.
 *
 * Which counters a try goes on (`countersOf`): always the kiosk's own; and for the person, on a kiosk on which they
 * have signed on before, one of just the two, elsewhere one for all strange kiosks together. So nobody can hold a
 * person up at their own kiosk from another one, and guessing from ever new kiosks gains nothing (OWASP ASVS 5.0,
 * 6.1.1: throttling that cannot be used to lock people out).
 */
export interface Attempts {
  /** Wrong PINs in a row. */
  readonly failures: number;
  readonly lastFailedMs: number;
}

const firstDelayMs = 5_000;
const longestDelayMs = 300_000;
/** After a day without a wrong PIN the counter starts anew. */
const forgottenMs = 24 * 3_600_000;

const freeTries = { person: 3, kiosk: 10 } as const;

/** What a try is counted on. */
export interface Counter {
  readonly name: string;
  readonly of: keyof typeof freeTries;
}

export const countersOf = (person: string, device: string, known: boolean): readonly Counter[] => [
  { name: `kiosk:${device}`, of: 'kiosk' },
  { name: known ? `person:${person}@${device}` : `person:${person}`, of: 'person' },
];

/** How long, in ms from `nowMs`, until the next try is let through; 0: at once. */
export const waitMs = ({ of }: Counter, attempts: Attempts | undefined, nowMs: number): number => {
  if (attempts === undefined) return 0;
  const over = attempts.failures - freeTries[of];
  if (over < 0) return 0;
  const delay = Math.min(firstDelayMs * 2 ** Math.min(over, 20), longestDelayMs);
  // A clock set back must not lengthen the wait.
  const passed = Math.max(nowMs - attempts.lastFailedMs, 0);
  return Math.max(delay - passed, 0);
};

/** The counter after one more wrong PIN. */
export const afterFailure = (attempts: Attempts | undefined, nowMs: number): Attempts => {
  const stale = attempts === undefined || nowMs - attempts.lastFailedMs > forgottenMs;
  return { failures: stale ? 1 : attempts.failures + 1, lastFailedMs: nowMs };
};
