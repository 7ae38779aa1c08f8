import { mkdir } from 'node:fs/promises';
import { createServer } from 'node:net';
import { networkInterfaces } from 'node:os';
import { readSettings, type Settings } from '../config';
import { err, errorText, ok, type Result } from '../result';
import { newestRevisions, openStore, readShop, type Store } from '../store';
import { databaseFile } from '../store/files';
import { doubtLines } from './doubt-lines';
import { seedDemo } from './seed-demo';

/** What `npm start` needs to know of a shop that is ready to be served. */
interface Plan {
  readonly port: number;
  readonly host: string;
  /** Lines for the person who started it. */
  readonly addresses: readonly string[];
}

/** Nothing is written before this is known: another server may be at work on the same data. */
const portIsFree = ({ port, host }: Settings): Promise<Result<undefined, string>> =>
  new Promise((resolve) => {
    const probe = createServer();
    probe.once('error', (error: NodeJS.ErrnoException) => {
      const why = error.code === 'EADDRINUSE' ? 'something else is listening there' : error.message;
      resolve(err(`Port ${port} of ${host} cannot be opened: ${why}.`));
    });
    probe.listen(port, host, () => {
      probe.close(() => {
        resolve(ok(undefined));
      });
    });
  });

const makeFolder = async ({ dataFolder }: Settings): Promise<Result<undefined, string>> => {
  try {
    await mkdir(dataFolder, { recursive: true, mode: 0o700 });
    return ok(undefined);
  } catch (error) {
    return err(`The data folder ${dataFolder} cannot be made: ${errorText(error)}`);
  }
};

const hostsOf = (host: string): readonly string[] => {
  if (host !== '0.0.0.0' && host !== '::') return [host.includes(':') ? `[${host}]` : host];
  const own = Object.values(networkInterfaces())
    .flatMap((addresses) => addresses ?? [])
    .filter((address) => address.family === 'IPv4' && !address.internal)
    .map((address) => address.address);
  return ['localhost', ...own];
};

const addresses = async (store: Store, { host, port }: Settings): Promise<readonly string[]> => {
  const shop = await readShop(store);
  const screens = [
    ['Choose a bay', '/'],
    ...(shop?.bays.map((bay) => [bay.name, `/bay/${bay.id}`]) ?? []),
    ['Health', '/api/health'],
  ] as const;
  const width = Math.max(...screens.map(([name]) => name.length));
  return hostsOf(host).flatMap((name) => [
    `${shop?.name ?? 'Baycall'} is served at http://${name}:${port}`,
    ...screens.map(([screen, path]) => `  ${screen.padEnd(width)}  http://${name}:${port}${path}`),
  ]);
};

/** Checks the settings, makes the data folder, brings the database up to date and seeds it on the first run. */
const prepare = async (): Promise<Result<Plan, string>> => {
  const settings = readSettings(process.env, process.cwd());
  if (!settings.ok) return settings;
  const { port, host, dataFolder } = settings.value;
  const free = await portIsFree(settings.value);
  if (!free.ok) return free;
  const folder = await makeFolder(settings.value);
  if (!folder.ok) return folder;
  const store = await openStore(databaseFile(dataFolder));
  if (!store.ok) return store;
  await seedDemo(store.value, new Date());
  const lines = [
    ...(await addresses(store.value, settings.value)),
    ...doubtLines(await newestRevisions(store.value)),
  ];
  await store.value.close();
  return ok({ port, host, addresses: lines });
};

const plan = await prepare();
if (plan.ok) {
  console.log(JSON.stringify(plan.value));
} else {
  console.error(plan.error);
  process.exitCode = 1;
}
