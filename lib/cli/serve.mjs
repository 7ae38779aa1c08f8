import { createServer } from 'node:http';
import { createRequire } from 'node:module';
import { setTimeout } from 'node:timers';
import { giveUp, inRoot, root, runTypeScript, say } from './steps.mjs';

/** Checks the settings, makes the data folder ready and tells where to listen; ends with one line where that fails. */
export const prepare = () => {
  const { status, stdout } = runTypeScript([inRoot('lib', 'cli', 'prepare.ts')]);
  if (status !== 0) process.exit(status ?? 1);
  return JSON.parse(stdout);
};

const listen = (server, { port, host }) =>
  new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, host, resolve);
  });

const endOn = (signals, server) => {
  const end = () => {
    server.close(() => process.exit(0));
    server.closeIdleConnections();
    // A kiosk keeps its connection open; what was acknowledged is on disk already.
    setTimeout(() => server.closeAllConnections(), 2000).unref();
  };
  for (const signal of signals) process.once(signal, end);
};

/** Serves the built app until it is told to end. */
export const serve = async ({ port, host, addresses }) => {
  Object.assign(process.env, { NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1' });
  const next = createRequire(inRoot('package.json'))('next');
  const app = next({ dev: false, dir: root, hostname: host, port });
  await app.prepare();
  const handle = app.getRequestHandler();
  const server = createServer((request, response) => {
    void handle(request, response);
  });
  try {
    await listen(server, { port, host });
  } catch (error) {
    giveUp(`Port ${port} of ${host} cannot be opened (${error.code}).`);
  }
  endOn(['SIGINT', 'SIGTERM', 'SIGHUP'], server);
  for (const line of addresses) say(line);
};
