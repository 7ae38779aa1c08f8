import { expect, test, vi } from 'vitest';
import { answer, route } from '@/lib/server';
import { readMetrics, readReady } from '@/lib/server/health';
import { log as ownLog, makeLog } from '@/lib/server/log';
import { signOn } from '@/lib/server/session';
import { event } from '../store/small-shop';
import { errorOf, freshServer, Kiosk, openJobServer } from './kiosk';

const get = { method: 'GET' } as const;

test('a server that can write and has room says that it is ready', async () => {
  const { kiosk } = await freshServer();
  const { status, body } = await kiosk.send(readReady, undefined, get);
  expect(status).toBe(200);
  expect(body).toMatchObject({ ready: true });
});

test('a server whose disk is nearly full is left out, and says why', async () => {
  const { server } = await freshServer();
  const nearlyFull = new Kiosk({ ...server, freeBytes: () => Promise.resolve(12_400_000) });
  expect(errorOf(await nearlyFull.send(readReady, undefined, get))).toMatchObject({
    status: 503,
    message: 'Only 12 MB are free on the disk. Make room.',
  });
});

test('the measures count what was stored and what was refused, and name no job', async () => {
  const { kiosk } = await openJobServer();
  await kiosk.append([kiosk.by(event(1, 2, { type: 'foremanCalled' }))]);
  await kiosk.append([kiosk.by(event(1, 9, { type: 'foremanCalled' }))]);
  const { body, headers } = await kiosk.send(readMetrics, undefined, get);
  expect(headers.get('content-type')).toContain('text/plain; version=0.0.4');
  expect(body).toContain('baycall_events_stored_total 2\n');
  expect(body).toMatch(/baycall_appends_refused_total\{code="\w+"\} 1\n/);
  expect(body).toContain('baycall_wall_listeners 0\n');
});

test('each request is counted by method, pattern and status', async () => {
  const { server } = await freshServer();
  globalThis.baycallShopServer = Promise.resolve({ ok: true, value: server });
  const { GET } = route<{ job: string }>({ GET: () => Promise.resolve(answer({}, 404)) });
  const params = Promise.resolve({ job: 'job-77' });
  await GET(new Request('http://kiosk.test/api/jobs/job-77'), { params });
  globalThis.baycallShopServer = undefined;
  const text = await server.metrics.text();
  expect(text).toContain(
    'baycall_request_seconds_count{method="GET",route="/api/jobs/:job",status="404"} 1\n',
  );
  expect(text).not.toContain('job-77');
});

test('a line of the log is one line of JSON with its time, level and error', () => {
  const lines: string[] = [];
  const log = makeLog('info', {
    write: (line) => {
      lines.push(line);
    },
  });
  log.debug('not wanted');
  log.error({ err: new Error('disk'), route: '/api/jobs/:job' }, 'a request failed');
  expect(lines).toHaveLength(1);
  expect(JSON.parse(lines[0] ?? '')).toEqual({
    level: 'error',
    time: expect.stringMatching(/^\d{4}-\d\d-\d\dT[\d:.]+Z$/) as string,
    route: '/api/jobs/:job',
    err: expect.objectContaining({ type: 'Error', message: 'disk' }) as object,
    msg: 'a request failed',
  });
});

test('who is turned away and who signs on is written down, with the kiosk and without the person', async () => {
  const { server } = await freshServer();
  const warned = vi.spyOn(ownLog, 'warn').mockReturnValue();
  const told = vi.spyOn(ownLog, 'info').mockReturnValue();
  globalThis.baycallShopServer = Promise.resolve({ ok: true, value: server });
  const { POST } = route({ POST: signOn });
  const sent = (pin: string) =>
    POST(
      new Request('http://kiosk.test:4870/api/session', {
        method: 'POST',
        headers: {
          host: 'kiosk.test:4870',
          origin: 'http://kiosk.test:4870',
          'content-type': 'application/json',
          cookie: 'baycall-device=9f8d6f0a-3c1b-4a4e-9a51-2c7f6f6b1d11',
        },
        body: JSON.stringify({ person: 'ada', pin, bay: 'bay-1' }),
      }),
      { params: Promise.resolve({}) },
    );
  expect((await sent('9999')).status).toBe(401);
  expect((await sent('1234')).status).toBe(200);
  globalThis.baycallShopServer = undefined;
  const device = expect.stringMatching(/^kiosk-[0-9a-f]{20}$/) as string;
  expect(warned.mock.calls).toEqual([
    [{ method: 'POST', route: '/api/session', status: 401, device }, 'turned away'],
  ]);
  expect(told.mock.calls).toEqual([[{ device, bay: 'bay-1', role: 'mechanic' }, 'signed on']]);
  expect(JSON.stringify([warned.mock.calls, told.mock.calls])).not.toMatch(/ada|1234|9999/);
  vi.restoreAllMocks();
});
