import { expect, test } from 'vitest';
import { beginSession, deviceOf, endSession, findSession } from '@/lib/access';
import { freshStore } from '../store/fresh-store';

const ada = { id: 'ada', name: 'Ada', role: 'mechanic' } as const;
const hour = 3_600_000;

test('a session is found by its token at its own kiosk, for twelve hours', async () => {
  const { store } = await freshStore();
  const token = await beginSession(store, { person: ada, bay: 'bay-1', device: 'k' }, 0);
  expect(await findSession(store, token, 'k', 11 * hour)).toEqual({
    person: ada,
    bay: 'bay-1',
    device: 'k',
    endsAtMs: 12 * hour,
  });
  expect(await findSession(store, token, 'k', 12 * hour)).toBeUndefined();
  expect(await findSession(store, token, 'another', 0)).toBeUndefined();
  expect(await findSession(store, `${token}x`, 'k', 0)).toBeUndefined();
});

test('the token itself is nowhere in the database', async () => {
  const { store } = await freshStore();
  const token = await beginSession(store, { person: ada, bay: 'bay-1', device: 'k' }, 0);
  const rows = await store.db.selectFrom('sessions').selectAll().execute();
  expect(rows).toHaveLength(1);
  expect(JSON.stringify(rows)).not.toContain(token);
});

test('an ended session is gone, and ended ones are swept away when the next begins', async () => {
  const { store } = await freshStore();
  const first = await beginSession(store, { person: ada, bay: 'bay-1', device: 'k' }, 0);
  await endSession(store, first);
  expect(await findSession(store, first, 'k', 1)).toBeUndefined();
  await beginSession(store, { person: ada, bay: 'bay-1', device: 'k' }, 0);
  await beginSession(store, { person: ada, bay: 'bay-1', device: 'k' }, 13 * hour);
  expect(await store.db.selectFrom('sessions').selectAll().execute()).toHaveLength(1);
});

test("a person's role is the one the shop gives them now", async () => {
  const { store } = await freshStore();
  const token = await beginSession(store, { person: ada, bay: 'bay-1', device: 'k' }, 0);
  await store.db.updateTable('people').set({ role: 'foreman' }).where('id', '=', 'ada').execute();
  expect((await findSession(store, token, 'k', 1))?.person.role).toBe('foreman');
});

test("a kiosk's name follows from its secret and does not give it away", () => {
  const secret = '5f0c2c5e-2f0e-4a4c-9d5b-0f9a1f7a6c11';
  expect(deviceOf(secret)).toMatch(/^kiosk-[0-9a-f]{20}$/);
  expect(deviceOf(secret)).toBe(deviceOf(secret));
  expect(deviceOf(secret)).not.toContain(secret.slice(0, 8));
  expect(deviceOf(secret)).not.toBe(deviceOf('5f0c2c5e-2f0e-4a4c-9d5b-0f9a1f7a6c12'));
});
