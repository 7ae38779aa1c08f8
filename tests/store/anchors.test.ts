import { createHash } from 'node:crypto';
import { sql } from 'kysely';
import { expect, test } from 'vitest';
import {
  anchorStore,
  canonicalJson,
  headOf,
  jobLog,
  openStore,
  verifyAll,
  type Store,
} from '@/lib/store';
import { linkOf, NO_LINK } from '@/lib/store/chain';
import { freshStore } from './fresh-store';
import { held, jobId, opened, resumed } from './small-shop';

/** Two jobs over three days: job 1 on each of them, job 2 on the second only. */
const threeDays = async () => {
  const { store, file } = await freshStore();
  const clock = { now: '2025-03-01T12:00:00Z' };
  const log = jobLog(store, () => new Date(clock.now));
  await log.append(jobId(1), [opened(1), held(1, 2)]);
  clock.now = '2025-03-02T07:00:00Z';
  await log.append(jobId(2), [opened(2, 'bay-2')]);
  await log.append(jobId(1), [resumed(1, 3)]);
  clock.now = '2025-03-03T07:00:00Z';
  await log.append(jobId(1), [held(1, 4)]);
  return { store, file, log, clock };
};

const anchorsOf = (store: Store) =>
  store.db.selectFrom('anchors').selectAll().orderBy('number').execute();
const faults = async (store: Store) => (await verifyAll(store.db)).faults;

const guarded = ['job_events', 'job_links', 'anchors', 'anchor_heads'];

/** What somebody does who has the file: the triggers are no obstacle to them. */
const past = async (store: Store, ...statements: readonly string[]): Promise<void> => {
  for (const table of guarded)
    for (const on of ['no_update', 'no_delete', 'no_replace'])
      await sql.raw(`drop trigger if exists ${table}_${on}`).execute(store.db);
  for (const statement of statements) await sql.raw(statement).execute(store.db);
};

/** Rewrites event 2 of job 1 and all links after it, so that the chain by itself holds. */
const rewriteWithLinks = async (store: Store): Promise<void> => {
  await past(
    store,
    `update job_events set event = replace(event, '"parts"', '"party"')
     where job = '${jobId(1)}' and seq = 2`,
  );
  const events = await store.db
    .selectFrom('job_events')
    .select(['seq', 'event'])
    .where('job', '=', jobId(1))
    .orderBy('seq')
    .execute();
  let link = NO_LINK;
  for (const { seq, event } of events) {
    link = linkOf(link, event);
    await store.db
      .updateTable('job_links')
      .set({ link })
      .where('job', '=', jobId(1))
      .where('seq', '=', seq)
      .execute();
  }
};

test('the first batch of a day is preceded by an anchor over all that was stored before', async () => {
  const { store } = await threeDays();
  expect(await anchorsOf(store)).toMatchObject([
    { number: 1, day: '2025-03-02', entry: 2 },
    { number: 2, day: '2025-03-03', entry: 4 },
  ]);
  expect(
    await store.db.selectFrom('anchor_heads').select(['number', 'job', 'seq']).execute(),
  ).toEqual([
    { number: 1, job: jobId(1), seq: 2 },
    { number: 2, job: jobId(1), seq: 3 },
    { number: 2, job: jobId(2), seq: 1 },
  ]);
  expect(await verifyAll(store.db)).toMatchObject({
    anchors: 2,
    lastAnchor: { day: '2025-03-03' },
    faults: [],
  });
});

test('an anchor is SHA-256 over the one before and the canonical text of the heads', async () => {
  const { store } = await threeDays();
  const [first, second] = await anchorsOf(store);
  const link = await headOf(store.db, jobId(2));
  const three = await store.db
    .selectFrom('job_links')
    .select('link')
    .where('job', '=', jobId(1))
    .where('seq', '=', 3)
    .executeTakeFirstOrThrow();
  const heads = [
    { job: jobId(1), seq: 3, link: three.link },
    { job: jobId(2), seq: 1, link },
  ];
  const text = `${first?.hash ?? ''}\n${canonicalJson({ day: '2025-03-03', entry: 4, heads })}`;
  expect(second?.hash).toBe(createHash('sha256').update(text).digest('hex'));
});

test('there is one anchor a day, and none before anything is stored', async () => {
  const { store } = await freshStore();
  await anchorStore(store, new Date('2025-03-01T12:00:00Z'));
  expect(await anchorsOf(store)).toEqual([]);
  const log = jobLog(store, () => new Date('2025-03-01T12:00:00Z'));
  await log.append(jobId(1), [opened(1)]);
  for (const hour of ['13', '14']) await anchorStore(store, new Date(`2025-03-01T${hour}:00:00Z`));
  expect(await anchorsOf(store)).toHaveLength(1);
});

test('a day on which nobody writes is anchored by the clock', async () => {
  const { store } = await threeDays();
  await anchorStore(store, new Date('2025-03-04T00:10:00Z'));
  expect(await anchorsOf(store)).toMatchObject([{}, {}, { day: '2025-03-04', entry: 5 }]);
  expect(await faults(store)).toEqual([]);
});

test('a clock that jumps ahead and back does not end the anchors', async () => {
  const { store, log, clock } = await threeDays();
  clock.now = '2099-01-01T00:00:00Z';
  await log.append(jobId(1), [resumed(1, 5)]);
  clock.now = '2025-03-04T07:00:00Z';
  await log.append(jobId(1), [held(1, 6)]);
  clock.now = '2025-03-05T07:00:00Z';
  await log.append(jobId(1), [resumed(1, 7)]);
  expect((await anchorsOf(store)).map(({ day }) => day)).toEqual([
    '2025-03-02',
    '2025-03-03',
    '2099-01-01',
    '2025-03-04',
    '2025-03-05',
  ]);
  expect(await faults(store)).toEqual([]);
});

test('an event rewritten with all its links is found out', async () => {
  const { store } = await threeDays();
  await rewriteWithLinks(store);
  expect(await faults(store)).toEqual([
    `An event from 1 to 2 of job ${jobId(1)} is not what was stored on 2025-03-02: ` +
      'it was rewritten with its links.',
  ]);
});

test('an end cut off with its links and its number is found out', async () => {
  const { store } = await threeDays();
  await past(
    store,
    `delete from job_links where job = '${jobId(1)}' and seq > 2`,
    `delete from job_events where job = '${jobId(1)}' and seq > 2`,
    `update jobs set seq = 2 where id = '${jobId(1)}'`,
  );
  expect(await faults(store)).toContain(
    `Event 3 of job ${jobId(1)} is missing: it was there on 2025-03-03.`,
  );
});

test('a whole job taken out is found out', async () => {
  const { store } = await threeDays();
  await past(
    store,
    ...['job_links', 'job_events'].map((table) => `delete from ${table} where job = '${jobId(2)}'`),
    `delete from jobs where id = '${jobId(2)}'`,
    'update job_events set entry = entry - 1 where entry > 3',
  );
  expect(await faults(store)).toEqual([
    `Event 1 of job ${jobId(2)} is missing: it was there on 2025-03-03.`,
  ]);
});

test('two jobs that changed places in the order of arrival are found out', async () => {
  const { store } = await threeDays();
  await past(
    store,
    'update job_events set entry = 9 where entry = 2',
    'update job_events set entry = 2 where entry = 3',
    'update job_events set entry = 3 where entry = 9',
  );
  expect(await faults(store)).toEqual([
    `Events of job ${jobId(1)} have another order of arrival than on 2025-03-02.`,
  ]);
});

test.each([
  ['its day', `update anchors set day = '2025-02-28' where number = 1`, '2025-02-28'],
  ['how much it holds', 'update anchors set entry = 1 where number = 1', '2025-03-02'],
  ['a head', 'update anchor_heads set seq = 1 where number = 1', '2025-03-02'],
  ['a head taken out', 'delete from anchor_heads where number = 1', '2025-03-02'],
  ['the one before', `update anchors set previous = '' where number = 2`, '2025-03-03'],
])('an anchor that was changed is named: %s', async (_, statement, day) => {
  const { store } = await threeDays();
  await past(store, statement);
  expect(await faults(store)).toEqual([
    `The anchor of ${day} is not what was stored: it was changed.`,
  ]);
});

test('an anchor taken out is missed', async () => {
  const { store } = await threeDays();
  await past(
    store,
    'delete from anchor_heads where number = 1',
    'delete from anchors where number = 1',
  );
  expect(await faults(store)).toEqual(['The anchor before that of 2025-03-03 is missing.']);
});

test('the database itself refuses to change or delete an anchor', async () => {
  const { store } = await threeDays();
  for (const [table, change] of [
    ['anchors', `update anchors set day = '2000-01-01'`],
    ['anchors', 'delete from anchors'],
    ['anchors', 'insert or replace into anchors select * from anchors'],
    ['anchor_heads', 'update anchor_heads set seq = 1'],
    ['anchor_heads', 'delete from anchor_heads'],
    ['anchor_heads', 'insert or replace into anchor_heads select * from anchor_heads'],
  ] as const)
    await expect(sql.raw(change).execute(store.db)).rejects.toThrow(
      `${table} is never changed, only added to`,
    );
});

test('two servers at one database make one anchor a day between them', async () => {
  const { store, file, clock, log } = await threeDays();
  const other = await openStore(file);
  if (!other.ok) throw new Error(other.error);
  clock.now = '2025-03-04T07:00:00Z';
  await jobLog(other.value, () => new Date(clock.now)).append(jobId(1), [resumed(1, 5)]);
  await log.append(jobId(1), [held(1, 6)]);
  expect(await anchorsOf(store)).toHaveLength(3);
  expect(await faults(store)).toEqual([]);
  await other.value.close();
});
