import { expect, test } from 'vitest';
import { readSession, signOff, signOn } from '@/lib/server/session';
import { errorOf, freshServer, Kiosk } from './kiosk';

test('a person signs on with their PIN and is then known at this kiosk', async () => {
  const { kiosk } = await freshServer();
  const answer = await kiosk.signOn('ada', '1234');
  const session = {
    person: { id: 'ada', name: 'Ada', role: 'mechanic' },
    bay: 'bay-1',
    device: kiosk.device,
    endsAt: '2025-03-02T00:00:00.000Z',
  };
  expect(answer).toMatchObject({ status: 200, body: session });
  expect(kiosk.device).toMatch(/^kiosk-[0-9a-f]{20}$/);
  const read = await kiosk.send(readSession, undefined, { method: 'GET' });
  expect(read.body).toEqual({ session });
});

test('the cookies are out of reach of scripts and other sites, and Secure over https', async () => {
  const { kiosk } = await freshServer();
  const plain = await kiosk.signOn('ada', '1234');
  const cookies = plain.headers.getSetCookie();
  expect(cookies).toHaveLength(2);
  for (const cookie of cookies) {
    expect(cookie).toMatch(/; Path=\/; HttpOnly; SameSite=Strict; Max-Age=\d+$/);
  }
  const overTls = await kiosk.send(signOn, undefined, {
    body: { person: 'ada', pin: '1234', bay: 'bay-1' },
    headers: { 'x-forwarded-proto': 'https' },
  });
  for (const cookie of overTls.headers.getSetCookie()) expect(cookie).toMatch(/; Secure$/);
});

test('the kiosk keeps its name from one person to the next', async () => {
  const { kiosk } = await freshServer();
  await kiosk.signOn('ada', '1234');
  const first = kiosk.device;
  await kiosk.signOn('finn', '5678');
  expect(kiosk.device).toBe(first);
});

test('a session copied to another browser is worth nothing there', async () => {
  const { server, kiosk } = await freshServer();
  const cookies = (await kiosk.signOn('ada', '1234')).headers.getSetCookie().join('; ');
  const token = /baycall-session=[^;]+/.exec(cookies)?.[0] ?? '';
  expect(token).not.toBe('');
  const other = new Kiosk(server);
  const read = await other.send(readSession, undefined, {
    method: 'GET',
    headers: { cookie: `${token}; baycall-device=5f0c2c5e-2f0e-4a4c-9d5b-0f9a1f7a6c11` },
  });
  expect(read.body).toEqual({ session: null });
});

test('signing off ends the session, and signing off again does no harm', async () => {
  const { kiosk } = await freshServer();
  await kiosk.signOn('ada', '1234');
  expect((await kiosk.send(signOff, undefined, { method: 'DELETE' })).status).toBe(204);
  expect((await kiosk.send(readSession, undefined, { method: 'GET' })).body).toEqual({
    session: null,
  });
  expect((await kiosk.send(signOff, undefined, { method: 'DELETE' })).status).toBe(204);
});

test('after twelve hours nobody is signed on any more', async () => {
  const { kiosk, clock } = await freshServer();
  await kiosk.signOn('ada', '1234');
  clock.ms += 12 * 3_600_000;
  expect((await kiosk.send(readSession, undefined, { method: 'GET' })).body).toEqual({
    session: null,
  });
});

test('a wrong PIN is refused, and after three the next must wait', async () => {
  const { kiosk, clock } = await freshServer();
  for (const pin of ['0000', '1111', '2222']) {
    expect(errorOf(await kiosk.signOn('ada', pin))).toMatchObject({
      status: 401,
      code: 'wrongPin',
    });
  }
  const early = await kiosk.signOn('ada', '1234');
  expect(errorOf(early)).toEqual({
    status: 429,
    code: 'wait',
    message: 'Too many wrong PINs. Try again in 5 s.',
  });
  expect(early.headers.get('retry-after')).toBe('5');
  clock.ms += 5_000;
  expect((await kiosk.signOn('ada', '1234')).status).toBe(200);
});

test('an unknown person is refused in the same words as a wrong PIN', async () => {
  const { kiosk } = await freshServer();
  const unknown = errorOf(await kiosk.signOn('nobody', '1234'));
  expect(unknown).toEqual(errorOf(await kiosk.signOn('ada', '0000')));
});

test('an unknown bay is refused', async () => {
  const { kiosk } = await freshServer();
  expect(errorOf(await kiosk.signOn('ada', '1234', 'bay-9'))).toMatchObject({
    status: 404,
    code: 'unknownBay',
  });
});

test.each([
  ['a PIN of three digits', { person: 'ada', pin: '123', bay: 'bay-1' }],
  ['a PIN that is a number', { person: 'ada', pin: 1234, bay: 'bay-1' }],
  ['no bay', { person: 'ada', pin: '1234' }],
  ['a member too many', { person: 'ada', pin: '1234', bay: 'bay-1', role: 'foreman' }],
  ['no object', ['ada', '1234', 'bay-1']],
  ['nothing', null],
])('%s is refused and counts as no try', async (_, body) => {
  const { kiosk, server } = await freshServer();
  const answer = await kiosk.send(signOn, undefined, { body });
  expect(errorOf(answer)).toMatchObject({ status: 400, code: 'invalid' });
  expect(await server.store.db.selectFrom('pin_attempts').selectAll().execute()).toEqual([]);
});
