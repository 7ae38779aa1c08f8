import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, expect, test, vi } from 'vitest';
import { answer, getShopServer, route } from '@/lib/server';
import { log } from '@/lib/server/log';
import { testFolder } from '../store/fresh-store';

const context = { params: Promise.resolve({}) };
const get = new Request('http://kiosk.test/api');
const body = async (response: Response): Promise<unknown> => response.json();

afterEach(async () => {
  const server = await globalThis.baycallShopServer;
  if (server?.ok) await server.value.store.close();
  globalThis.baycallShopServer = undefined;
  vi.unstubAllEnvs();
  vi.restoreAllMocks();
});

test('a method that an address does not have is refused with those that it has', async () => {
  const { PATCH, OPTIONS } = route({ GET: () => Promise.resolve(answer({})) });
  const refused = await PATCH(new Request('http://kiosk.test/api', { method: 'PATCH' }), context);
  expect(refused.status).toBe(405);
  expect(refused.headers.get('allow')).toBe('OPTIONS, GET');
  expect(await body(refused)).toEqual({
    error: { code: 'method', message: 'PATCH is not for this address.' },
  });
  const options = await OPTIONS(get, context);
  expect([options.status, options.headers.get('allow')]).toEqual([204, 'OPTIONS, GET']);
});

test('the server is opened once for all requests', async () => {
  vi.stubEnv('BAYCALL_DATA', testFolder());
  const [one, two] = await Promise.all([getShopServer(), getShopServer()]);
  expect(one).toBe(two);
  expect(one.ok).toBe(true);
});

test('while the data folder cannot be used the answer says so, and afterwards it works by itself', async () => {
  const data = join(testFolder(), 'data');
  vi.stubEnv('BAYCALL_DATA', data);
  writeFileSync(data, 'a file where the folder should be');
  const { GET } = route({ GET: () => Promise.resolve(answer({ here: true })) });
  const refused = await GET(get, context);
  expect(refused.status).toBe(503);
  expect(await body(refused)).toMatchObject({ error: { code: 'unavailable' } });
  rmSync(data);
  mkdirSync(data);
  expect(await body(await GET(get, context))).toEqual({ here: true });
});

test('a fault of the program is logged and not told', async () => {
  vi.stubEnv('BAYCALL_DATA', testFolder());
  const logged = vi.spyOn(log, 'error').mockReturnValue();
  const { GET } = route({ GET: () => Promise.reject(new Error('secret detail')) });
  const failed = await GET(get, context);
  expect(failed.status).toBe(500);
  expect(await failed.text()).not.toContain('secret detail');
  expect(logged).toHaveBeenCalledOnce();
  expect(logged.mock.calls[0]?.[0]).toMatchObject({
    err: { message: 'secret detail' },
    method: 'GET',
    route: '/api',
  });
});

test.each([
  ['SQLITE_FULL', 507, 'diskFull'],
  ['ENOSPC', 507, 'diskFull'],
  ['SQLITE_READONLY', 503, 'diskReadOnly'],
  ['EROFS', 503, 'diskReadOnly'],
  ['SQLITE_IOERR_WRITE', 503, 'unavailable'],
])(
  'trouble of the disk (%s) is told as such, and that sending again does no harm',
  async (code, status, problem) => {
    vi.stubEnv('BAYCALL_DATA', testFolder());
    vi.spyOn(log, 'error').mockReturnValue();
    const { GET } = route({
      GET: () => Promise.reject(Object.assign(new Error('disk'), { code })),
    });
    const failed = await GET(get, context);
    expect(failed.status).toBe(status);
    expect(await body(failed)).toMatchObject({
      error: { code: problem, message: expect.stringContaining('no harm') as string },
    });
  },
);
