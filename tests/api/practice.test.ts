import { expect, test } from 'vitest';
import type { KeptPractice, PracticeRecord } from '@/lib/practice';
import { addPractice, readPractices } from '@/lib/server/practice';
import { practicesOf } from '@/lib/store/practices';
import { errorOf, freshServer, type Kiosk } from './kiosk';

const practice = (n: number, more: Partial<PracticeRecord> = {}): PracticeRecord => ({
  id: `0195a000-0000-7000-8000-00000000000${n}`,
  model: 'en-bay-3',
  phrases: [{ say: 'next', tries: [{ as: 'other', heard: 'back', confidence: 0.8 }] }],
  own: [{ insteadOf: 'next', say: 'carry on' }],
  ...more,
});

const add = (kiosk: Kiosk, body: unknown) => kiosk.send(addPractice, undefined, { body });
const read = async (kiosk: Kiosk): Promise<readonly KeptPractice[]> => {
  const { body } = await kiosk.send(readPractices, undefined, { method: 'GET' });
  return (body as { practices: readonly KeptPractice[] }).practices;
};

test('a practice stays with whoever is signed on, at every kiosk', async () => {
  const { kiosk, server } = await freshServer();
  await kiosk.signOn('ada', '1234');
  expect((await add(kiosk, practice(1))).status).toBe(201);
  await kiosk.signOn('ada', '1234', 'bay-2');
  expect(await read(kiosk)).toEqual([
    { ...practice(1), person: 'ada', at: server.now().toISOString() },
  ]);
  await kiosk.signOn('finn', '5678');
  expect(await read(kiosk)).toEqual([]);
});

test('the newest with each speech model counts', async () => {
  const { kiosk, clock } = await freshServer();
  await kiosk.signOn('ada', '1234');
  await add(kiosk, practice(1));
  await add(kiosk, practice(2, { model: 'another', own: [] }));
  clock.ms += 60_000;
  await add(kiosk, practice(3, { own: [] }));
  expect((await read(kiosk)).map(({ id, model, own }) => [id.slice(-1), model, own])).toEqual([
    ['3', 'en-bay-3', []],
    ['2', 'another', []],
  ]);
});

test('sent again it changes nothing; another under its id is refused', async () => {
  const { kiosk, server } = await freshServer();
  await kiosk.signOn('ada', '1234');
  expect((await add(kiosk, practice(1))).status).toBe(201);
  expect((await add(kiosk, practice(1))).status).toBe(200);
  expect(errorOf(await add(kiosk, practice(1, { own: [] })))).toMatchObject({ code: 'idReused' });
  await kiosk.signOn('finn', '5678');
  expect(errorOf(await add(kiosk, practice(1)))).toMatchObject({ code: 'idReused' });
  expect(await practicesOf(server.store, 'finn')).toEqual([]);
});

test('nobody’s is kept, nor one from another site', async () => {
  const { kiosk, server } = await freshServer();
  expect(errorOf(await add(kiosk, practice(1)))).toMatchObject({ status: 401 });
  const nobody = await kiosk.send(readPractices, undefined, { method: 'GET' });
  expect(errorOf(nobody)).toMatchObject({ status: 401 });
  await kiosk.signOn('ada', '1234');
  const elsewhere = { body: practice(1), headers: { origin: 'http://elsewhere.test' } };
  expect(errorOf(await kiosk.send(addPractice, undefined, elsewhere))).toMatchObject({
    status: 403,
  });
  expect(await practicesOf(server.store, 'ada')).toEqual([]);
});

test.each([
  ['words that nobody may choose', { own: [{ insteadOf: 'next', say: 'close the job' }] }],
  ['words for what destroys', { own: [{ insteadOf: 'take that back', say: 'carry on' }] }],
  ['a phrase that is not practised', { phrases: [{ say: 'close the job', tries: [] }] }],
  ['somebody’s name', { person: 'finn' }],
])('%s: refused', async (_, wrong) => {
  const { kiosk } = await freshServer();
  await kiosk.signOn('ada', '1234');
  expect(errorOf(await add(kiosk, { ...practice(1), ...wrong }))).toMatchObject({
    code: 'invalid',
  });
});

test('what is kept is never changed', async () => {
  const { kiosk, server } = await freshServer();
  await kiosk.signOn('ada', '1234');
  await add(kiosk, practice(1));
  const { db } = server.store;
  await expect(db.updateTable('voice_practices').set({ person: 'finn' }).execute()).rejects.toThrow(
    'voice_practices is never changed, only added to',
  );
  await expect(db.deleteFrom('voice_practices').execute()).rejects.toThrow('never changed');
});
