import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, writeFileSync } from 'node:fs';
import { createServer, type AddressInfo } from 'node:net';
import { join } from 'node:path';
import { text } from 'node:stream/consumers';
import { fileURLToPath } from 'node:url';
import { expect, onTestFinished, test } from 'vitest';
import { jobLog, openStore, shopView } from '@/lib/store';
import { held } from '../store/small-shop';
import { testFolder } from '../store/fresh-store';

const program = fileURLToPath(new URL('../../lib/cli/prepare.ts', import.meta.url));
const slow = { timeout: 60_000 };

const prepare = async (environment: Readonly<Record<string, string>>) => {
  const child = spawn(process.execPath, ['--import', 'tsx', program], {
    env: { ...process.env, ...environment },
  });
  const ended = once(child, 'exit');
  const [out, error] = await Promise.all([text(child.stdout), text(child.stderr)]);
  const status: unknown = (await ended)[0];
  return { status, out, error };
};

const freePort = async (): Promise<string> => {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as AddressInfo;
  server.close();
  await once(server, 'close');
  return String(port);
};

const shopIn = async (folder: string) => {
  const store = await openStore(join(folder, 'baycall.db'));
  if (!store.ok) throw new Error(store.error);
  onTestFinished(() => store.value.close());
  return { store: store.value, view: await shopView(store.value) };
};

test('a wrong setting ends it with one line that names the setting', slow, async () => {
  expect(await prepare({ PORT: 'eighty' })).toEqual({
    status: 1,
    out: '',
    error: 'PORT must be a whole number from 1 to 65535, not "eighty".\n',
  });
});

test('a port that is taken ends it with one line, before anything is written', slow, async () => {
  const taken = createServer().listen(0, '127.0.0.1');
  await once(taken, 'listening');
  onTestFinished(() => void taken.close());
  const { port } = taken.address() as AddressInfo;
  const data = join(testFolder(), 'data');
  expect(await prepare({ PORT: String(port), BAYCALL_DATA: data })).toEqual({
    status: 1,
    out: '',
    error: `Port ${port} of 127.0.0.1 cannot be opened: something else is listening there.\n`,
  });
  expect(existsSync(data)).toBe(false);
});

test('a data folder that cannot be made ends it with one line', slow, async () => {
  const file = join(testFolder(), 'file');
  writeFileSync(file, '');
  const { status, error } = await prepare({
    PORT: await freePort(),
    BAYCALL_DATA: join(file, 'data'),
  });
  expect(status).toBe(1);
  expect(error).toMatch(/^The data folder .* cannot be made: .*\n$/);
});

test(
  'the first run sets up the demo shop and names its screens, the next keeps what was done since',
  slow,
  async () => {
    const data = join(testFolder(), 'new', 'data');
    const environment = { PORT: await freePort(), BAYCALL_DATA: data };
    const first = await prepare(environment);
    expect(first).toMatchObject({ status: 0, error: '' });
    const plan = JSON.parse(first.out) as { addresses: readonly string[] };
    expect(plan.addresses.join('\n')).toContain(`http://127.0.0.1:${environment.PORT}/bay/bay-1`);

    const { store, view } = await shopIn(data);
    expect(view?.jobs.map((job) => job.bay)).toEqual(['bay-1', 'bay-2', 'bay-3']);
    const [job] = view?.jobs ?? [];
    if (job === undefined) throw new Error('the demo has no open job');
    const hold = { ...held(1, 2), job: job.id };
    const stored = await jobLog(store, () => new Date()).append(job.id, [hold]);
    expect(stored).toMatchObject({ ok: true });

    expect(await prepare(environment)).toMatchObject({ status: 0, out: first.out });
    const after = await shopView(store);
    expect(after?.jobs.map(({ id }) => id)).toEqual(view?.jobs.map(({ id }) => id));
    expect(after?.jobs[0]).toMatchObject({ phase: 'held', seq: 2 });
  },
);
