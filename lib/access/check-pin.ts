import { personSchema, type Person } from '../people';
import { err, ok, type Result } from '../result';
import type { Store } from '../store';
import { admit } from './attempts';
import { verifyPin } from './pin-hash';

export type PinFailure =
  { readonly kind: 'wrongPin' } | { readonly kind: 'wait'; readonly forMs: number };

/** Finds out whether a person gave their PIN at a kiosk; slowed down as lib/access/throttle says. */
export const checkPin = async (
  store: Store,
  {
    person,
    pin,
    device,
  }: { readonly person: string; readonly pin: string; readonly device: string },
  nowMs: number,
): Promise<Result<Person, PinFailure>> => {
  const row = await store.db
    .selectFrom('people')
    .innerJoin('pins', 'pins.person', 'people.id')
    .select(['people.id', 'people.name', 'people.role', 'pins.hash'])
    .where('people.id', '=', person)
    .executeTakeFirst();
  // Who is not of the shop has one counter for all, so that invented names do not fill the table.
  const admission = await admit(store, row?.id ?? '?', device, nowMs);
  if (admission.kind === 'wait') return err(admission);
  if (row === undefined || !(await verifyPin(pin, row.hash))) return err({ kind: 'wrongPin' });
  await admission.succeeded();
  const { id, name, role } = row;
  return ok(personSchema.parse({ id, name, role }));
};
