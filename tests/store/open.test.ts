import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { sql } from 'kysely';
import { expect, test } from 'vitest';
import { openStore } from '@/lib/store';
import { migrations } from '@/lib/store/migrations';
import { opens, testFolder } from './fresh-store';

test('a new database says of itself that it is durable', async () => {
  const store = await opens(join(testFolder(), 'baycall.db'));
  expect(store.pragmas).toEqual({
    journal_mode: 'wal',
    synchronous: 2,
    foreign_keys: 1,
    busy_timeout: 5000,
  });
  await store.close();
});

test('foreign keys hold', async () => {
  const store = await opens(join(testFolder(), 'baycall.db'));
  await expect(
    sql`insert into pins (person, hash) values ('nobody', 'x')`.execute(store.db),
  ).rejects.toThrow('FOREIGN KEY constraint failed');
  await store.close();
});

test('opening twice leaves the tables as they are', async () => {
  const file = join(testFolder(), 'baycall.db');
  await (await opens(file)).close();
  const store = await opens(file);
  const done = await sql<{ name: string }>`select name from kysely_migration`.execute(store.db);
  expect(done.rows.map(({ name }) => name)).toEqual(Object.keys(migrations));
  expect(done.rows.slice(0, 3)).toEqual([
    { name: '0001-shop-and-jobs' },
    { name: '0002-shop-facts' },
    { name: '0003-job-links' },
  ]);
  await store.close();
});

test('a file that is no database is refused in one line', async () => {
  const file = join(testFolder(), 'baycall.db');
  writeFileSync(file, 'this is a letter, not a database. '.repeat(200));
  const store = await openStore(file);
  expect(store).toMatchObject({ ok: false, error: expect.stringContaining(file) as string });
  expect(store).toMatchObject({ error: expect.not.stringContaining('\n') as string });
});

test('a folder that is not there is refused in one line', async () => {
  const store = await openStore(join(testFolder(), 'missing', 'baycall.db'));
  expect(store).toMatchObject({ ok: false, error: expect.stringContaining('missing') as string });
});

test('a database from a newer version of the app is refused', async () => {
  const file = join(testFolder(), 'baycall.db');
  const store = await opens(file);
  await sql`insert into kysely_migration values ('9999-later', '2099-01-01')`.execute(store.db);
  await store.close();
  const older = await openStore(file);
  expect(older).toMatchObject({
    ok: false,
    error: expect.stringContaining('could not be brought up to date') as string,
  });
});
