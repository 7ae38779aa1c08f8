import { createServer } from 'node:http';
import { createRequire } from 'node:module';
import { setInterval, setTimeout } from 'node:timers';
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

/** npm passes a signal on to its shell, which dies of it and says nothing: then our parent is another. */
const onOrphaned = (end) => {
  if (process.env.npm_lifecycle_event === undefined) return;
  const parent = process.ppid;
  setInterval(() => {
    if (process.ppid !== parent) end();
  }, 500).unref();
};

const endWhenTold = (server) => {
  let ending = false;
  const end = () => {
    if (ending) return;
    ending = true;
    server.close(() => process.exit(0));
    server.closeIdleConnections();
    // A kiosk keeps its connection open; what was acknowledged is on disk already.
    setTimeout(() => process.exit(0), 2000).unref();
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, end);
  onOrphaned(end);
};

const isWellFormed = (url) => {
  try {
    decodeURIComponent(url.split('?')[0]);
    return true;
  } catch {
    return false;
  }
};

/** The framework fails at an address that cannot be decoded; it is refused here, in the form of every other error. */
const refuseAddress = (response) => {
  const error = { code: 'malformed', message: 'The address is not well-formed.' };
  response.writeHead(400, { 'content-type': 'application/json' }).end(JSON.stringify({ error }));
};

/** Serves the built app until it is told to end. */
export const serve = async ({ port, host, addresses }) => {
  Object.assign(process.env, { NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1' });
  const next = createRequire(inRoot('package.json'))('next');
  const app = next({ dev: false, dir: root, hostname: host, port });
  await app.prepare();
  const handle = app.getRequestHandler();
  const server = createServer((request, response) => {
    if (isWellFormed(request.url)) void handle(request, response);
    else refuseAddress(response);
  });
  // Long enough for a sound clip over a bad radio link, short enough that a stalled one holds nothing up.
  server.requestTimeout = 60_000;
  try {
    await listen(server, { port, host });
  } catch (error) {
    giveUp(`Port ${port} of ${host} cannot be opened (${error.code}).`);
  }
  endWhenTold(server);
  for (const line of addresses) say(line);
};
