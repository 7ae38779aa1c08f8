import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Libsql from 'libsql';
import { expect, test } from 'vitest';
import { headOf, jobLog, jobView, newestRevisions, readShop, verifyAll } from '@/lib/store';
import { linkOf, NO_LINK } from '@/lib/store/chain';
import { canonicalJson } from '@/lib/store';
import { migrations } from '@/lib/store/migrations';
import { opens, testFolder } from './fresh-store';
import { migrateTo, releasedEvents, schemaOf } from './release';
import { held, jobId, noon, smallShop, threeSteps } from './small-shop';

const folder = fileURLToPath(new URL('released', import.meta.url));

/** By their last migration. A file here is a database as that version left it, and is never changed. */
const released = readdirSync(folder).map((name) => name.replace(/\.sql$/, ''));

const asReleased = (version: string): string => {
  const file = join(testFolder(), 'baycall.db');
  const database = new Libsql(file);
  database.exec(readFileSync(join(folder, `${version}.sql`), 'utf8'));
  database.close();
  return file;
};

test('there is a database of each released version', () => {
  expect(released).toEqual(
    expect.arrayContaining(['0001-shop-and-jobs', '0002-shop-facts', '0003-job-links']),
  );
  expect(Object.keys(migrations)).toEqual(expect.arrayContaining(released));
});

test('the migrations have an order that goes by their names', () => {
  const names = Object.keys(migrations);
  expect(names).toEqual([...names].sort());
  expect(names.map((name) => /^\d{4}-[a-z-]+$/.test(name))).toEqual(names.map(() => true));
});

test.each(released)('a database of %s is brought up to date and loses nothing', async (version) => {
  const store = await opens(asReleased(version));
  expect(await readShop(store)).toMatchObject({ bays: smallShop.bays, people: smallShop.people });
  expect(await newestRevisions(store)).toEqual([threeSteps]);
  expect((await jobView(store, jobId(1)))?.events).toEqual(releasedEvents);
  const links = releasedEvents.reduce((link, event) => linkOf(link, canonicalJson(event)), NO_LINK);
  expect(await headOf(store.db, jobId(1))).toBe(links);
  expect(await verifyAll(store.db)).toMatchObject({ jobs: 1, events: 3, faults: [] });
  const log = jobLog(store, () => noon);
  expect(await log.append(jobId(1), [held(1, 4)])).toMatchObject({ ok: true, value: { seq: 4 } });
  expect(await verifyAll(store.db)).toMatchObject({ events: 4, faults: [] });
  await store.close();
});

test.each(released)(
  'its tables are those of a new database that was never older',
  async (version) => {
    const old = asReleased(version);
    await (await opens(old)).close();
    const fresh = join(testFolder(), 'baycall.db');
    await (await opens(fresh)).close();
    expect(schemaOf(new Libsql(old)).map(squeezed).sort()).toEqual(
      schemaOf(new Libsql(fresh)).map(squeezed).sort(),
    );
  },
);

test.each(released)('the migrations up to %s still make what was released', async (version) => {
  const now = await migrateTo(join(testFolder(), 'baycall.db'), version);
  expect(schemaOf(now).map(squeezed).sort()).toEqual(
    schemaOf(new Libsql(asReleased(version)))
      .map(squeezed)
      .sort(),
  );
});

const squeezed = (statement: string): string => statement.replace(/\s+/g, ' ').trim();
