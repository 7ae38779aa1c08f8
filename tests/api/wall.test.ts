import { expect, onTestFinished, test, vi } from 'vitest';
import { notePresence, readWall } from '@/lib/server/wall';
import { beatEveryMs, offlineAfterMs, wallMessageSchema, type WallMessage } from '@/lib/wall';
import { event, held, jobId, resumed } from '../store/small-shop';
import { errorOf, freshServer, openJobServer, type Kiosk } from './kiosk';

interface Heard {
  readonly id: string;
  readonly message: WallMessage;
}

/** A wall that reads the stream as it comes. */
const listen = async (kiosk: Kiosk, after?: string) => {
  const headers = after === undefined ? {} : { 'last-event-id': after };
  const request = new Request('http://wall.test/api/wall', { headers });
  const response = await readWall(kiosk.server, request, undefined);
  const reader = response.body?.getReader();
  if (reader === undefined) throw new Error('the answer has no content');
  const decoder = new TextDecoder();
  let text = '';
  const next = async (): Promise<Heard> => {
    for (;;) {
      const end = text.indexOf('\n\n');
      if (end >= 0) {
        const [, id, data] = /^id: (.*)\ndata: (.*)$/s.exec(text.slice(0, end)) ?? [];
        text = text.slice(end + 2);
        if (id !== undefined && data !== undefined)
          return { id, message: wallMessageSchema.parse(JSON.parse(data)) };
        continue;
      }
      const chunk = await reader.read();
      if (chunk.done) throw new Error('the stream ended');
      text += decoder.decode(chunk.value, { stream: true });
    }
  };
  const leave = (): Promise<void> => reader.cancel();
  onTestFinished(leave);
  return { response, next, leave };
};

const baysOf = ({ message }: Heard): readonly string[] =>
  message.kind === 'beat' ? [] : message.bays.map(({ bay }) => bay.id);

const jobOf = ({ message }: Heard, bay: string) =>
  message.kind === 'beat' ? undefined : message.bays.find((one) => one.bay.id === bay)?.job;

test('a wall is told the whole shop first, then each bay that changes', async () => {
  const { kiosk } = await openJobServer();
  const wall = await listen(kiosk);
  expect(wall.response.headers.get('content-type')).toMatch(/^text\/event-stream/);
  expect(wall.response.headers.get('cache-control')).toContain('no-transform');
  const whole = await wall.next();
  expect(whole.message).toMatchObject({
    kind: 'whole',
    shop: 'Test shop',
    order: ['bay-1', 'bay-2'],
  });
  expect(jobOf(whole, 'bay-1')).toMatchObject({ id: jobId(1), seq: 1, mechanic: 'Ada' });
  await kiosk.append([kiosk.by(held(1, 2))]);
  const some = await wall.next();
  expect(some.message.kind).toBe('some');
  expect(baysOf(some)).toEqual(['bay-1']);
  expect(jobOf(some, 'bay-1')).toMatchObject({ seq: 2, phase: 'held', hold: { by: 'Ada' } });
});

test('what is refused is not told', async () => {
  const { kiosk } = await openJobServer();
  const wall = await listen(kiosk);
  await wall.next();
  expect((await kiosk.append([kiosk.by(resumed(1, 2))])).status).toBe(409);
  await kiosk.append([kiosk.by(held(1, 2))]);
  expect(jobOf(await wall.next(), 'bay-1')).toMatchObject({ seq: 2, phase: 'held' });
});

test('a wall that was cut off goes on from where it was, and hears only what it missed', async () => {
  const { kiosk } = await openJobServer();
  const first = await listen(kiosk);
  const whole = await first.next();
  await first.leave();
  await kiosk.append([kiosk.by(held(1, 2))]);
  await kiosk.append([kiosk.by(resumed(1, 3))]);
  const again = await listen(kiosk, whole.id);
  const missed = await again.next();
  expect(missed.message.kind).toBe('some');
  expect(baysOf(missed)).toEqual(['bay-1']);
  expect(jobOf(missed, 'bay-1')).toMatchObject({ seq: 3, phase: 'running' });
  // Nothing was missed since: a sign of life at once, and no bay.
  const third = await listen(kiosk, missed.id);
  expect((await third.next()).message.kind).toBe('beat');
});

test.each(['other-3', 'nonsense', '', 'x-99999999999999999999', '__proto__-1'])(
  'from a position that this server never gave, a wall is told the whole again: %s',
  async (position) => {
    const { kiosk } = await openJobServer();
    const wall = await listen(kiosk, position);
    expect((await wall.next()).message.kind).toBe('whole');
  },
);

test('a position of this server that lies ahead of it is none', async () => {
  const { kiosk } = await openJobServer();
  const { id } = await (await listen(kiosk)).next();
  const ahead = `${id.split('-')[0] ?? ''}-1000000`;
  expect((await (await listen(kiosk, ahead)).next()).message.kind).toBe('whole');
});

test('several walls hear the same', async () => {
  const { kiosk } = await openJobServer();
  const walls = await Promise.all([listen(kiosk), listen(kiosk), listen(kiosk)]);
  for (const wall of walls) await wall.next();
  await kiosk.append([kiosk.by(event(1, 2, { type: 'foremanCalled' }))]);
  for (const wall of walls) {
    const { message } = await wall.next();
    expect(message).toMatchObject({ bays: [{ wants: [{ kind: 'foremanCalled' }] }] });
  }
});

test('a wall that takes nothing is not sent ever more: once it takes again, it hears how things stand', async () => {
  const { kiosk } = await openJobServer();
  const wall = await listen(kiosk);
  for (let seq = 2; seq <= 61; seq += 2) {
    await kiosk.append([kiosk.by(held(1, seq))]);
    await kiosk.append([kiosk.by(resumed(1, seq + 1))]);
    await new Promise((resolve) => setTimeout(resolve, 25));
  }
  const heard: Heard[] = [];
  do heard.push(await wall.next());
  while (!heard.some((one) => jobOf(one, 'bay-1')?.seq === 61));
  expect(heard.length).toBeLessThan(10);
});

test('a job that is moved leaves its bay and stands in the other', async () => {
  const { kiosk } = await openJobServer();
  const wall = await listen(kiosk);
  await wall.next();
  const moved = kiosk.foremanEvent(2, {
    type: 'jobReassigned',
    bay: 'bay-2',
    reason: { text: 'lift broken' },
  });
  expect(await kiosk.server.log.append(jobId(1), [moved])).toMatchObject({ ok: true });
  const after = await wall.next();
  expect(baysOf(after)).toEqual(['bay-1', 'bay-2']);
  expect(jobOf(after, 'bay-1')).toBeUndefined();
  expect(jobOf(after, 'bay-2')).toMatchObject({ id: jobId(1) });
});

test('nothing is listened for once the last wall has gone', async () => {
  const { kiosk } = await openJobServer();
  const wall = await listen(kiosk);
  expect(kiosk.server.wall.listeners).toBe(1);
  await wall.leave();
  expect(kiosk.server.wall.listeners).toBe(0);
});

const present = (kiosk: Kiosk, body: unknown = {}, bay = 'bay-1') =>
  kiosk.send(notePresence, { bay }, { body });

test('a kiosk that says it is there learns which job is open there and how far it is', async () => {
  const { kiosk } = await openJobServer();
  expect(await present(kiosk)).toMatchObject({
    status: 200,
    body: { job: { id: jobId(1), seq: 1 } },
  });
  expect(await present(kiosk, {}, 'bay-2')).toMatchObject({ status: 200, body: { job: null } });
  expect(await kiosk.storedTypes()).toEqual(['jobOpened']);
});

test('a kiosk that falls silent is said to be offline since it was last heard of, until it is back', async () => {
  vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] });
  onTestFinished(() => {
    vi.useRealTimers();
  });
  const { kiosk, clock } = await openJobServer();
  const wall = await listen(kiosk);
  await wall.next();
  await present(kiosk);
  const seenMs = clock.ms;
  clock.ms += offlineAfterMs + 1;
  await vi.advanceTimersByTimeAsync(beatEveryMs);
  const silent = await wall.next();
  expect(silent.message).toMatchObject({ kind: 'some' });
  const bay1 = silent.message.kind === 'some' ? silent.message.bays[0] : undefined;
  expect(bay1?.kiosk.offlineSince).toBe(new Date(seenMs).toISOString());
  expect(bay1?.wants).toMatchObject([{ kind: 'kioskOffline' }]);
  await present(kiosk);
  const back = await wall.next();
  expect(back.message).toMatchObject({ bays: [{ bay: { id: 'bay-1' }, kiosk: {}, wants: [] }] });
});

test('a kiosk that hears nobody says why', async () => {
  const { kiosk } = await openJobServer();
  const wall = await listen(kiosk);
  await wall.next();
  await present(kiosk, { cannotBeHeard: 'No microphone is there.' });
  expect((await wall.next()).message).toMatchObject({
    bays: [{ kiosk: { cannotBeHeard: 'No microphone is there.' } }],
  });
});

test('bad signs of a kiosk are refused', async () => {
  const { kiosk } = await freshServer();
  expect(errorOf(await present(kiosk, {}, 'bay-9'))).toMatchObject({
    status: 404,
    code: 'unknownBay',
  });
  expect(errorOf(await present(kiosk, { cannotBeHeard: '' }))).toMatchObject({ code: 'invalid' });
  expect(errorOf(await present(kiosk, { cannotBeHeard: 'x'.repeat(201) }))).toMatchObject({
    code: 'invalid',
  });
  expect(errorOf(await present(kiosk, { seen: 'now' }))).toMatchObject({ code: 'invalid' });
  const elsewhere = { headers: { origin: 'http://elsewhere.test' }, body: {} };
  expect(errorOf(await kiosk.send(notePresence, { bay: 'bay-1' }, elsewhere))).toMatchObject({
    status: 403,
    code: 'crossSite',
  });
});
