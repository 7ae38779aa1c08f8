import type { Store } from '../store';
import type { Reader } from '../store/reader';
import { afterFailure, countersOf, waitMs, type Attempts, type Counter } from './throttle';

/** A try that may be made now, and is already counted as wrong; or how long it must wait. */
export type Admission =
  | { readonly kind: 'go'; readonly succeeded: () => Promise<void> }
  | { readonly kind: 'wait'; readonly forMs: number };

const readCounter = async (db: Reader, name: string): Promise<Attempts | undefined> => {
  const row = await db
    .selectFrom('pin_attempts')
    .selectAll()
    .where('counter', '=', name)
    .executeTakeFirst();
  return row && { failures: row.failures, lastFailedMs: row.last_failed_ms };
};

const countFailure = async (db: Reader, counter: Counter, nowMs: number): Promise<void> => {
  const { failures, lastFailedMs } = afterFailure(await readCounter(db, counter.name), nowMs);
  const row = { failures, last_failed_ms: lastFailedMs };
  await db
    .insertInto('pin_attempts')
    .values({ counter: counter.name, ...row })
    .onConflict((conflict) => conflict.column('counter').doUpdateSet(row))
    .execute();
};

const isKnown = async (db: Reader, person: string, device: string): Promise<boolean> =>
  (await db
    .selectFrom('known_kiosks')
    .select('person')
    .where('person', '=', person)
    .where('device', '=', device)
    .executeTakeFirst()) !== undefined;

/**
 * Lets a try with a PIN through, or says how long it has to wait. It is counted as wrong before it is looked at, so
 * that many at once gain nothing; `succeeded` takes that back and remembers the kiosk.
 */
export const admit = (
  { db }: Store,
  person: string,
  device: string,
  nowMs: number,
): Promise<Admission> =>
  db.transaction().execute(async (write) => {
    const counters = countersOf(person, device, await isKnown(write, person, device));
    let forMs = 0;
    for (const counter of counters) {
      forMs = Math.max(forMs, waitMs(counter, await readCounter(write, counter.name), nowMs));
    }
    if (forMs > 0) return { kind: 'wait', forMs };
    for (const counter of counters) await countFailure(write, counter, nowMs);
    const succeeded = async (): Promise<void> => {
      const names = counters.map((counter) => counter.name);
      await db.deleteFrom('pin_attempts').where('counter', 'in', names).execute();
      await db
        .insertInto('known_kiosks')
        .values({ person, device, first_ms: nowMs })
        .onConflict((conflict) => conflict.doNothing())
        .execute();
    };
    return { kind: 'go', succeeded };
  });
