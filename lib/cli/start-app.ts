import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { createServer, type AddressInfo } from 'node:net';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));

export interface RunningApp {
  /** `http://127.0.0.1:PORT` */
  readonly address: string;
  /** Its process, to look at. */
  readonly pid: number | undefined;
  /** What it said until it served. */
  readonly said: readonly string[];
  /** Ends it as a service manager does; answers its exit status. */
  readonly stop: () => Promise<number | null>;
  /** Ends it as a power cut does. */
  readonly kill: () => Promise<void>;
}

const freePort = async (): Promise<number> => {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as AddressInfo;
  server.close();
  await once(server, 'close');
  return port;
};

const ended = async (child: ChildProcess, signal: NodeJS.Signals): Promise<number | null> => {
  if (child.exitCode === null && child.signalCode === null) {
    const exit = once(child, 'exit');
    child.kill(signal);
    await exit;
  }
  return child.exitCode;
};

/**
 * Starts the app as `npm start` does, over the given data folder, and waits until it serves. On a free port, unless it
 * is to come back where it was.
 */
export const startApp = async (
  dataFolder: string,
  environment: Readonly<Record<string, string>> = {},
  samePort?: number,
): Promise<RunningApp> => {
  const port = samePort ?? (await freePort());
  const address = `http://127.0.0.1:${port}`;
  const child = spawn(process.execPath, ['lib/cli/start.mjs'], {
    cwd: root,
    env: { ...process.env, ...environment, PORT: String(port), BAYCALL_DATA: dataFolder },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const said: string[] = [];
  for await (const line of createInterface({ input: child.stdout })) {
    said.push(line);
    if (!line.includes(`${address}/api/health`)) continue;
    child.stdout.resume();
    return {
      address,
      pid: child.pid,
      said,
      stop: () => ended(child, 'SIGTERM'),
      kill: async () => {
        await ended(child, 'SIGKILL');
      },
    };
  }
  throw new Error(`the app did not start:\n${said.join('\n')}`);
};
