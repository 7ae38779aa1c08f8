import { sql } from 'kysely';
import { expect, test } from 'vitest';
import { diskTrouble } from '@/lib/server/disk-trouble';
import { jobView, openStore, verifyAll, type Store } from '@/lib/store';
import { freshStore } from './fresh-store';
import { event, held, jobId, opened, resumed } from './small-shop';

/** Lets the database grow by so many pages of 4096 bytes more, as a disk with that much room would. */
const roomFor = async (store: Store, pages: number): Promise<void> => {
  const { rows } = await sql<{ page_count: number }>`pragma page_count`.execute(store.db);
  const most = (rows[0]?.page_count ?? 0) + pages;
  await sql`pragma max_page_count = ${sql.lit(most)}`.execute(store.db);
};

const failureOf = async (doing: Promise<unknown>): Promise<Error> => {
  try {
    await doing;
  } catch (error) {
    if (error instanceof Error) return error;
  }
  throw new Error('it did not fail');
};

/** What a kiosk is told. */
const toldOf = async (error: Error) => {
  const response = diskTrouble(error);
  return { status: response?.status, body: (await response?.json()) as unknown };
};

const longWords = 'x'.repeat(2000);

test('on a full disk a batch is stored whole or not at all, and the kiosk is told what to do', async () => {
  const { store, log } = await freshStore();
  await log.append(jobId(1), [opened(1)]);
  await roomFor(store, 2);
  const batch = Array.from({ length: 40 }, (_, n) =>
    n % 2 === 0 ? held(1, n + 2, longWords) : resumed(1, n + 2),
  );
  const failure = await failureOf(log.append(jobId(1), batch));
  expect(failure).toMatchObject({ code: 'SQLITE_FULL' });
  expect(await toldOf(failure)).toMatchObject({
    status: 507,
    body: {
      error: { code: 'diskFull', message: expect.stringContaining('Make room on it.') as string },
    },
  });
  expect((await jobView(store, jobId(1)))?.events).toEqual([opened(1)]);
  expect(await verifyAll(store.db)).toMatchObject({ events: 1, faults: [] });

  await roomFor(store, 1000);
  expect(await log.append(jobId(1), batch)).toMatchObject({ ok: true, value: { seq: 41 } });
  expect(await verifyAll(store.db)).toMatchObject({ events: 41, faults: [] });
});

test('of several kiosks that write as the disk fills up, each is stored or told, and what was stored stays', async () => {
  const { store, log } = await freshStore();
  await log.append(jobId(1), [opened(1)]);
  await log.append(jobId(2), [opened(2, 'bay-2')]);
  await roomFor(store, 6);
  let seq = 1;
  let stored = 2;
  let failed = 0;
  while (failed === 0) {
    seq += 1;
    const one = (n: number) =>
      seq % 2 === 0 ? held(n, seq, longWords) : event(n, seq, { type: 'jobResumed' });
    const went = await Promise.allSettled([1, 2].map((n) => log.append(jobId(n), [one(n)])));
    stored += went.filter(({ status }) => status === 'fulfilled').length;
    failed = went.filter(({ status }) => status === 'rejected').length;
  }
  expect(await verifyAll(store.db)).toMatchObject({ events: stored, faults: [] });
});

test('on a disk that may not be written nothing is stored, what is there can still be read', async () => {
  const { store, log } = await freshStore();
  await log.append(jobId(1), [opened(1)]);
  // What SQLite answers for a file or a disk that is read-only.
  await sql`pragma query_only = on`.execute(store.db);
  const failure = await failureOf(log.append(jobId(1), [held(1, 2)]));
  expect(failure).toMatchObject({ code: 'SQLITE_READONLY' });
  expect(await toldOf(failure)).toMatchObject({
    status: 503,
    body: { error: { code: 'diskReadOnly' } },
  });
  expect((await jobView(store, jobId(1)))?.events).toEqual([opened(1)]);
  await sql`pragma query_only = off`.execute(store.db);
  expect(await log.append(jobId(1), [held(1, 2)])).toMatchObject({ ok: true });
});

test('a database for which there is no room at the start is refused in one line', async () => {
  // Linux: every write to it finds a full disk.
  const store = await openStore('/dev/full');
  expect(store).toMatchObject({ ok: false, error: expect.not.stringContaining('\n') as string });
});
