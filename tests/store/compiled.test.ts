import { sql } from 'kysely';
import { expect, test } from 'vitest';
import { compiledOnce } from '@/lib/store/compiled';
import { freshStore } from './fresh-store';

const namesOf = () => {
  let built = 0;
  const query = compiledOnce((db, count) => {
    built += 1;
    return db
      .selectFrom('bays')
      .select('name')
      .where('id', 'in', Array<string>(count).fill(''))
      .orderBy('id');
  });
  return { query, built: () => built };
};

test('a query is built once for each count, and gives what its values ask for', async () => {
  const { store } = await freshStore();
  const { query, built } = namesOf();
  expect((await query(store.db, 1, ['bay-1'])).rows).toEqual([{ name: 'Bay 1' }]);
  expect((await query(store.db, 1, ['bay-2'])).rows).toEqual([{ name: 'Bay 2' }]);
  expect((await query(store.db, 2, ['bay-1', 'bay-2'])).rows).toHaveLength(2);
  expect(built()).toBe(2);
});

test('a transaction uses what the database has built', async () => {
  const { store } = await freshStore();
  const { query, built } = namesOf();
  await query(store.db, 1, ['bay-1']);
  await store.db.transaction().execute((write) => query(write, 1, ['bay-2']));
  expect(built()).toBe(1);
});

test('very large ones are not kept', async () => {
  const { store } = await freshStore();
  const { query, built } = namesOf();
  const many = Array<string>(500).fill('bay-1');
  await query(store.db, 500, many);
  expect((await query(store.db, 500, many)).rows).toEqual([{ name: 'Bay 1' }]);
  expect(built()).toBe(2);
});

test('values and places that do not match are an error', async () => {
  const { store } = await freshStore();
  await expect((async () => namesOf().query(store.db, 2, ['bay-1']))()).rejects.toThrow(
    '1 values for 2 places',
  );
});

test('a statement that is kept prepared still answers after the tables have changed', async () => {
  const { store } = await freshStore();
  const { query } = namesOf();
  await query(store.db, 1, ['bay-1']);
  await sql`alter table bays add column colour text`.execute(store.db);
  await sql`update bays set name = 'Other' where id = 'bay-1'`.execute(store.db);
  expect((await query(store.db, 1, ['bay-1'])).rows).toEqual([{ name: 'Other' }]);
});
