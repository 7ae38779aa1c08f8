import { fork, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';

const toldPort = z.object({ port: z.number() });
const program = fileURLToPath(new URL('server.ts', import.meta.url));
const root = fileURLToPath(new URL('../../..', import.meta.url));

/** A server of the interface in a process of its own. */
export interface RunningServer {
  readonly address: string;
  /** Turns its clock; afterwards it tells the new time. */
  jump(ms: number): Promise<void>;
  /** Ends it as a power cut ends a process: it can do nothing more. */
  kill(): Promise<void>;
}

const ended = async (child: ChildProcess): Promise<void> => {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const exit = once(child, 'exit');
  child.kill('SIGKILL');
  await exit;
};

export const startServer = async (dataFolder: string): Promise<RunningServer> => {
  const child = fork(program, {
    cwd: root,
    execArgv: ['--import', 'tsx'],
    env: { ...process.env, BAYCALL_DATA: dataFolder, BAYCALL_LOG: 'silent' },
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  });
  const gone = once(child, 'exit').then(() => {
    throw new Error('the server ended before it served');
  });
  const [told] = (await Promise.race([once(child, 'message'), gone])) as readonly unknown[];
  gone.catch(() => undefined); // it is meant to end later
  const { port } = toldPort.parse(told);
  return {
    address: `http://127.0.0.1:${port}`,
    async jump(ms) {
      const done = once(child, 'message');
      child.send({ jumpMs: ms });
      await done;
    },
    kill: () => ended(child),
  };
};
