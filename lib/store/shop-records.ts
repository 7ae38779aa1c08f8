import { personSchema } from '../people';
import {
  baySchema,
  shopSchema,
  torqueToolSchema,
  type Bay,
  type Shop,
  type ShopSettings,
} from '../shop';
import type { Revision } from '../procedure';
import { canonicalJson } from './canonical-json';
import type { Store } from './open';
import { publishRevision } from './procedures';
import type { Reader } from './reader';

/** All that a shop needs on its first day. */
export interface FirstDay {
  readonly shop: Shop;
  /** By person; made by lib/access/pin-hash. */
  readonly pinHashes: Readonly<Record<string, string>>;
  readonly procedures: readonly Revision[];
}

const factsSchema = shopSchema.pick({ adapters: true, settings: true });

/** The shop's records, or nothing where none has been set up yet. */
export const readShop = async ({ db }: Store): Promise<Shop | undefined> => {
  const shop = await db.selectFrom('shop').select(['name', 'facts']).executeTakeFirst();
  if (shop === undefined) return undefined;
  const people = await db
    .selectFrom('people')
    .select(['id', 'name', 'role'])
    .orderBy('place')
    .execute();
  const bays = await db
    .selectFrom('bays')
    .select(['id', 'name', 'facts'])
    .orderBy('place')
    .execute();
  const tools = await db.selectFrom('torque_tools').select('facts').orderBy('place').execute();
  return {
    name: shop.name,
    bays: bays.map(bayOf),
    people: people.map((person) => personSchema.parse(person)),
    torqueTools: tools.map((tool) => torqueToolSchema.parse(JSON.parse(tool.facts))),
    ...factsSchema.parse(JSON.parse(shop.facts)),
  };
};

/** Changes how the shop wants things done; what is not named stays. Answers all settings; nothing before there is a shop. */
export const changeSettings = (
  { db }: Store,
  changed: ShopSettings,
): Promise<ShopSettings | undefined> =>
  db.transaction().execute(async (write) => {
    const shop = await write.selectFrom('shop').select('facts').executeTakeFirst();
    if (shop === undefined) return undefined;
    const facts = factsSchema.parse(JSON.parse(shop.facts));
    const settings = { ...facts.settings, ...changed };
    await write
      .updateTable('shop')
      .set({ facts: canonicalJson({ ...facts, settings }) })
      .execute();
    return settings;
  });

const bayFactsSchema = baySchema.omit({ id: true, name: true });

const bayOf = ({ id, name, facts }: { id: string; name: string; facts: string }): Bay => ({
  id,
  name,
  ...bayFactsSchema.parse(JSON.parse(facts)),
});

export const readBay = async (db: Reader, bay: string): Promise<Bay | undefined> => {
  const row = await db
    .selectFrom('bays')
    .select(['id', 'name', 'facts'])
    .where('id', '=', bay)
    .executeTakeFirst();
  return row === undefined ? undefined : bayOf(row);
};

/** Sets by which word a bay's kiosk is called; undefined: by none. Answers the bay, if there is such a one. */
export const setCallWord = async (
  { db }: Store,
  id: string,
  callWord: Bay['callWord'],
): Promise<Bay | undefined> =>
  db.transaction().execute(async (write) => {
    const bay = await readBay(write, id);
    if (bay === undefined) return undefined;
    const facts = canonicalJson(callWord === undefined ? {} : { callWord });
    await write.updateTable('bays').set({ facts }).where('id', '=', id).execute();
    return readBay(write, id);
  });

/** Writes a shop into an empty database, all or nothing. Tells whether it did: a shop that is there stays as it is. */
export const setUpShop = async (
  { db }: Store,
  { shop, pinHashes, procedures }: FirstDay,
  now: Date,
): Promise<boolean> =>
  db.transaction().execute(async (write) => {
    if (await write.selectFrom('shop').select('id').executeTakeFirst()) return false;
    const { adapters, settings } = shop;
    const facts = canonicalJson({
      ...(adapters === undefined ? {} : { adapters }),
      ...(settings === undefined ? {} : { settings }),
    });
    await write
      .insertInto('shop')
      .values({ id: 1, name: shop.name, set_up_at: now.toISOString(), facts })
      .execute();
    for (const [place, { id, name, ...set }] of shop.bays.entries()) {
      await write
        .insertInto('bays')
        .values({ id, place, name, facts: canonicalJson(set) })
        .execute();
    }
    for (const [place, { id, name, role }] of shop.people.entries()) {
      await write.insertInto('people').values({ id, place, name, role }).execute();
    }
    for (const [person, hash] of Object.entries(pinHashes)) {
      await write.insertInto('pins').values({ person, hash }).execute();
    }
    for (const [place, tool] of shop.torqueTools.entries()) {
      const row = { id: tool.id, place, facts: canonicalJson(tool) };
      await write.insertInto('torque_tools').values(row).execute();
    }
    for (const revision of procedures) await publishRevision(write, revision);
    return true;
  });
