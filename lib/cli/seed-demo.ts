import { randomUUID } from 'node:crypto';
import { demoJobs, demoPins, demoProcedures, demoShop, type DemoJob } from '../../demo';
import { hashPin } from '../access';
import type { JobEvent } from '../job';
import type { Shop } from '../shop';
import { jobLog, readShop, setUpShop, type Store } from '../store';

const opening = (shop: Shop, { openedBy, ...happening }: DemoJob, now: Date): JobEvent => {
  const role = shop.people.find((person) => person.id === openedBy)?.role;
  if (role === undefined) throw new Error(`The demo has nobody called ${openedBy}.`);
  return {
    format: 1,
    id: randomUUID(),
    job: randomUUID(),
    seq: 1,
    at: now.toISOString(),
    actor: openedBy,
    role,
    device: 'demo',
    input: { by: 'shop' },
    happening: { type: 'jobOpened', ...happening },
  };
};

/** Puts the demo workshop into an empty store, each bay with its open job. Tells whether it did. */
export const seedDemo = async (store: Store, now: Date): Promise<boolean> => {
  if ((await readShop(store)) !== undefined) return false;
  const shop = demoShop(now.toISOString());
  const hashes = await Promise.all(
    Object.entries(demoPins).map(async ([person, pin]) => [person, await hashPin(pin)] as const),
  );
  const pinHashes = Object.fromEntries(hashes);
  if (!(await setUpShop(store, { shop, pinHashes, procedures: demoProcedures }, now))) return false;
  const log = jobLog(store, () => now);
  for (const job of demoJobs) {
    const event = opening(shop, job, now);
    const stored = await log.append(event.job, [event]);
    if (!stored.ok) throw new Error(`The demo job of ${job.bay}: ${JSON.stringify(stored.error)}`);
  }
  return true;
};
