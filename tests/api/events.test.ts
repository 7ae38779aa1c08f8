import { expect, test } from 'vitest';
import { readBayView } from '@/lib/server/bays';
import { readHealth } from '@/lib/server/health';
import { readJobEvents } from '@/lib/server/jobs';
import { event, held, jobId, opened, resumed } from '../store/small-shop';
import { errorOf, freshServer, Kiosk, openJobServer } from './kiosk';

test('a kiosk opens a job and goes on with it, and reads back what it wrote', async () => {
  const { kiosk } = await freshServer();
  await kiosk.signOn('ada', '1234');
  const opening = await kiosk.append([kiosk.by(opened(1))]);
  expect(opening).toMatchObject({ status: 200, body: { stored: [1], seq: 1 } });
  const more = await kiosk.append([kiosk.by(held(1, 2)), kiosk.by(resumed(1, 3))]);
  expect(more).toMatchObject({ status: 200, body: { stored: [2, 3], seq: 3 } });
  const read = await kiosk.send(readJobEvents, { job: jobId(1) }, { method: 'GET' });
  expect(read.body).toMatchObject({
    revision: { procedure: 'three-steps', revision: 1 },
    events: [kiosk.by(opened(1)), kiosk.by(held(1, 2)), kiosk.by(resumed(1, 3))],
    head: expect.stringMatching(/^[0-9a-f]{64}$/) as string,
  });
});

test('a bay names its job, people and procedures', async () => {
  const { kiosk } = await openJobServer();
  const bay = await kiosk.send(readBayView, { bay: 'bay-1' }, { method: 'GET' });
  expect(bay.body).toMatchObject({
    bay: { id: 'bay-1', name: 'Bay 1' },
    job: { id: jobId(1), title: 'Three steps', phase: 'running', seq: 1 },
    people: [{ id: 'ada' }, { id: 'finn' }],
    procedures: [{ procedure: 'three-steps', revision: 1, title: 'Three steps' }],
  });
  expect(JSON.stringify(bay.body)).not.toContain('scrypt');
  const empty = await kiosk.send(readBayView, { bay: 'bay-2' }, { method: 'GET' });
  expect(empty.body).toMatchObject({ job: null });
});

test('a batch sent again is answered the same and stored once', async () => {
  const { kiosk } = await openJobServer();
  const batch = [kiosk.by(held(1, 2)), kiosk.by(resumed(1, 3))];
  const first = await kiosk.append(batch);
  expect((await kiosk.append(batch)).body).toEqual(first.body);
  expect(await kiosk.storedTypes()).toEqual(['jobOpened', 'jobHeld', 'jobResumed']);
});

test('events in the wrong order are refused with the number that was expected', async () => {
  const { kiosk } = await openJobServer();
  const swapped = [kiosk.by(resumed(1, 3)), kiosk.by(held(1, 2))];
  expect(errorOf(await kiosk.append(swapped))).toMatchObject({
    status: 409,
    code: 'sequence',
    expectedSeq: 2,
    index: 0,
  });
  expect(await kiosk.storedTypes()).toEqual(['jobOpened']);
});

test('another event at a number that is taken is a conflict', async () => {
  const { kiosk } = await openJobServer();
  await kiosk.append([kiosk.by(held(1, 2))]);
  const rival = kiosk.by(held(1, 2), { id: '99999999-0000-4000-9000-000000000001' });
  expect(errorOf(await kiosk.append([rival]))).toMatchObject({
    status: 409,
    code: 'conflict',
    expectedSeq: 3,
  });
});

test('an id sent again with other content is refused', async () => {
  const { kiosk } = await openJobServer();
  await kiosk.append([kiosk.by(held(1, 2))]);
  expect(errorOf(await kiosk.append([kiosk.by(held(1, 2, 'other'))]))).toMatchObject({
    status: 409,
    code: 'idReused',
  });
});

test('what the job does not allow is refused in plain words', async () => {
  const { kiosk } = await openJobServer();
  const refused = errorOf(await kiosk.append([kiosk.by(resumed(1, 2))]));
  expect(refused).toMatchObject({ status: 409, code: 'notHeld', index: 0, expectedSeq: 2 });
  expect(refused.message).toMatch(/[a-z]+ [a-z]+/);
});

test('a second open job in a bay is refused and the first is named', async () => {
  const { kiosk } = await openJobServer();
  const second = await kiosk.append([kiosk.by(opened(2))], {}, jobId(2));
  expect(errorOf(second)).toMatchObject({ status: 409, code: 'bayTaken', job: jobId(1) });
});

test('without signing on nothing is written', async () => {
  const { kiosk, server } = await openJobServer();
  const stranger = new Kiosk(server);
  expect(errorOf(await stranger.append([kiosk.by(held(1, 2))]))).toMatchObject({
    status: 401,
    code: 'signOn',
  });
  expect(await kiosk.storedTypes()).toEqual(['jobOpened']);
});

test.each([
  ['in the name of somebody else', { actor: 'finn' }, 'notYou'],
  ['in a role that is not theirs', { role: 'foreman' as const }, 'notYourRole'],
  ['for another kiosk', { device: 'kiosk-0' }, 'notYourKiosk'],
])('nobody writes %s', async (_, who, code) => {
  const { kiosk } = await openJobServer();
  const batch = [kiosk.by(held(1, 2)), kiosk.by(resumed(1, 3), who)];
  expect(errorOf(await kiosk.append(batch))).toMatchObject({ status: 403, code, index: 1 });
  expect(await kiosk.storedTypes()).toEqual(['jobOpened']);
});

test('nobody writes to a job of another bay', async () => {
  const { kiosk } = await openJobServer();
  await kiosk.signOn('ada', '1234', 'bay-2');
  expect(errorOf(await kiosk.append([kiosk.by(held(1, 2))]))).toMatchObject({
    status: 403,
    code: 'notYourBay',
  });
  const elsewhere = await kiosk.append([kiosk.by(opened(2, 'bay-1'))], {}, jobId(2));
  expect(errorOf(elsewhere)).toMatchObject({ status: 403, code: 'notYourBay' });
});

test('a foreman answers a call at the mechanic’s kiosk with their own PIN, and the mechanic stays signed on', async () => {
  const { kiosk } = await openJobServer();
  await kiosk.append([kiosk.by(event(1, 2, { type: 'foremanCalled' }))]);
  const answered = kiosk.foremanEvent(3, { type: 'foremanAnswered' });
  expect(await kiosk.asForeman('finn', '5678', [answered])).toMatchObject({
    status: 200,
    body: { stored: [3], seq: 3 },
  });
  expect((await kiosk.append([kiosk.by(held(1, 4))])).status).toBe(200);
});

test('a foreman at somebody’s kiosk does nothing but decide, sign, answer or reopen', async () => {
  const { kiosk } = await openJobServer();
  const hold = kiosk.by(held(1, 2), { actor: 'finn', role: 'foreman' });
  expect(errorOf(await kiosk.asForeman('finn', '5678', [hold]))).toMatchObject({
    status: 403,
    code: 'notForForeman',
  });
});

test('a mechanic’s PIN does not make a foreman, and the throttle counts here too', async () => {
  const { kiosk } = await openJobServer();
  await kiosk.append([kiosk.by(event(1, 2, { type: 'foremanCalled' }))]);
  const own = kiosk.by(event(1, 3, { type: 'foremanAnswered' }));
  expect(errorOf(await kiosk.asForeman('ada', '1234', [own]))).toMatchObject({
    status: 403,
    code: 'notForeman',
  });
  const answered = kiosk.foremanEvent(3, { type: 'foremanAnswered' });
  for (const pin of ['0000', '1111', '2222']) {
    expect(errorOf(await kiosk.asForeman('finn', pin, [answered])).status).toBe(401);
  }
  expect(errorOf(await kiosk.asForeman('finn', '5678', [answered])).status).toBe(429);
  expect(await kiosk.storedTypes()).toEqual(['jobOpened', 'foremanCalled']);
});

test('health tells how the database is set and whether there is a speech model', async () => {
  const { kiosk } = await freshServer();
  expect((await kiosk.send(readHealth, undefined, { method: 'GET' })).body).toEqual({
    ok: true,
    database: { journalMode: 'wal', synchronous: 'full' },
    speechModel: true,
  });
});
