import { createHash } from 'node:crypto';
import { sql } from 'kysely';
import { expect, test } from 'vitest';
import { canonicalJson, firstBreak, headOf, verifyAll, type Store } from '@/lib/store';
import { freshStore } from './fresh-store';
import { held, jobId, opened, resumed } from './small-shop';

const withThree = async () => {
  const fresh = await freshStore();
  const events = [opened(1), held(1, 2, 'parts'), resumed(1, 3)];
  const stored = await fresh.log.append(jobId(1), events);
  if (!stored.ok) throw new Error(JSON.stringify(stored.error));
  return { ...fresh, events };
};

/** What somebody does who has the file: the triggers are no obstacle to them. */
const past = async (store: Store, ...statements: readonly string[]): Promise<void> => {
  for (const table of ['job_events', 'job_links'])
    for (const on of ['no_update', 'no_delete', 'no_replace'])
      await sql.raw(`drop trigger ${table}_${on}`).execute(store.db);
  for (const statement of statements) await sql.raw(statement).execute(store.db);
};
const kindAndSeq = async (store: Store): Promise<unknown> => {
  const found = await firstBreak(store.db, jobId(1));
  return found === undefined ? 'holds' : [found.seq, found.kind];
};

test('each event is linked to the one before it by SHA-256 over its canonical text', async () => {
  const { store, events } = await withThree();
  const link = events.reduce(
    (before, event) =>
      createHash('sha256')
        .update(`${before}\n${canonicalJson(event)}`)
        .digest('hex'),
    '',
  );
  expect(await headOf(store.db, jobId(1))).toBe(link);
  expect(await verifyAll(store.db)).toMatchObject({ jobs: 1, events: 3, faults: [] });
});

test('the chain goes on over batches, and an event sent twice is linked once', async () => {
  const { store, log, events } = await withThree();
  const more = held(1, 4, 'tools');
  await log.append(jobId(1), [...events, more]);
  await log.append(jobId(1), [more]);
  expect(await kindAndSeq(store)).toBe('holds');
  const links = await store.db.selectFrom('job_links').select('seq').execute();
  expect(links.map(({ seq }) => seq)).toEqual([1, 2, 3, 4]);
});

test('an altered event is named', async () => {
  const { store } = await withThree();
  await past(
    store,
    `update job_events set event = replace(event, '"parts"', '"party"') where seq = 2`,
  );
  expect(await kindAndSeq(store)).toEqual([2, 'altered']);
  expect((await verifyAll(store.db)).breaks.map(({ message }) => message)).toEqual([
    `Event 2 of job ${jobId(1)} is not what was stored: it or its place in the order was changed.`,
  ]);
});

test('two events that changed places are named at the first of them', async () => {
  const { store } = await withThree();
  await past(
    store,
    `update job_events set seq = 99 where seq = 2`,
    `update job_events set seq = 2 where seq = 3`,
    `update job_events set seq = 3 where seq = 99`,
  );
  expect(await kindAndSeq(store)).toEqual([2, 'altered']);
});

test.each([
  ['in the middle', 2],
  ['at the end', 3],
])('a missing event is named: %s', async (_, seq) => {
  const { store } = await withThree();
  await past(store, `delete from job_events where seq = ${seq}`);
  expect(await kindAndSeq(store)).toEqual([seq, 'missing']);
});

test('an end cut off with its links is still missed, since the job knows how many there were', async () => {
  const { store } = await withThree();
  await past(store, 'delete from job_events where seq = 3', 'delete from job_links where seq = 3');
  expect(await kindAndSeq(store)).toEqual([3, 'missing']);
});

test('an event put in past the app is named', async () => {
  const { store } = await withThree();
  await past(
    store,
    `insert into job_events (id, job, seq, type, at, actor, bay, stored_at, event)
     select 'x', job, 4, type, at, actor, bay, stored_at, event from job_events where seq = 3`,
  );
  expect(await kindAndSeq(store)).toEqual([4, 'unlinked']);
});

test('the database itself refuses to change or delete a link', async () => {
  const { store } = await withThree();
  for (const statement of [
    `update job_links set link = upper(link)`,
    'delete from job_links',
    'insert or replace into job_links select * from job_links',
  ])
    await expect(sql.raw(statement).execute(store.db)).rejects.toThrow(
      'job_links is never changed, only added to',
    );
});

test.each([
  ['who did it', `actor = 'finn'`],
  ['what kind it is', `type = 'foremanCalled'`],
  ['when it was', `at = '2025-03-01T13:00:00+00:00'`],
  ['its id', `id = '99999999-0000-4000-9000-000000000002'`],
])('a column that says otherwise than the event is named: %s', async (_, change) => {
  const { store } = await withThree();
  await past(store, `update job_events set ${change} where seq = 2`);
  expect(await kindAndSeq(store)).toEqual([2, 'altered']);
});

test('an order of arrival that goes back is named', async () => {
  const { store } = await withThree();
  await past(
    store,
    'update job_events set entry = 9 where seq = 2',
    'update job_events set entry = 2 where seq = 3',
    'update job_events set entry = 3 where seq = 2',
  );
  expect(await kindAndSeq(store)).toEqual([3, 'altered']);
});

test('a whole job taken out leaves a gap in what arrived', async () => {
  const { store, log } = await withThree();
  await log.append(jobId(2), [opened(2, 'bay-2')]);
  await log.append(jobId(1), [held(1, 4, 'tools')]);
  await past(
    store,
    ...['job_links', 'job_events'].map((table) => `delete from ${table} where job = '${jobId(2)}'`),
    `delete from jobs where id = '${jobId(2)}'`,
  );
  expect((await verifyAll(store.db)).faults).toEqual([
    `What arrived right before event 4 of job ${jobId(1)} is missing.`,
  ]);
});
