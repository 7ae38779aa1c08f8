import { once } from 'node:events';
import { readFile, stat } from 'node:fs/promises';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { join, normalize, sep } from 'node:path';
import { hearingAnswer, type HearingFolders } from '../hearing';

export interface HearingServer {
  readonly origin: string;
  close(): Promise<void>;
}

/** Files of the folders are served under the names given to them, `/name/path`. */
export type SharedFolders = Readonly<Record<string, string>>;

const fileAnswer = async (shared: SharedFolders, pathname: string): Promise<Response> => {
  const [, name = '', ...parts] = pathname.split('/').map(decodeURIComponent);
  const folder = shared[name];
  const path = normalize(parts.join('/'));
  if (folder === undefined || path.split(sep).includes('..'))
    return new Response(null, { status: 404 });
  const full = join(folder, path);
  try {
    if (!(await stat(full)).isFile()) return new Response(null, { status: 404 });
  } catch {
    return new Response(null, { status: 404 });
  }
  return new Response(new Uint8Array(await readFile(full)), {
    headers: { 'content-type': 'application/octet-stream' },
  });
};

const send = async (answer: Response, response: ServerResponse): Promise<void> => {
  response.writeHead(answer.status, Object.fromEntries(answer.headers));
  const reader = answer.body?.getReader();
  for (;;) {
    const part = await reader?.read();
    if (part?.value === undefined) break;
    if (!response.write(part.value)) await once(response, 'drain');
  }
  response.end();
};

/** Serves `/hearing` exactly as the app does, and recordings beside it, on a free port of this machine. */
export const serveHearing = async (
  folders: HearingFolders,
  shared: SharedFolders,
): Promise<HearingServer> => {
  const answer = async (request: IncomingMessage, origin: string): Promise<Response> => {
    const headers = new Headers();
    const known = request.headers['if-none-match'];
    if (known !== undefined) headers.set('if-none-match', known);
    const asked = new Request(new URL(request.url ?? '/', origin), { headers });
    const { pathname } = new URL(asked.url);
    return pathname.startsWith('/hearing/')
      ? hearingAnswer(folders, asked, true)
      : fileAnswer(shared, pathname);
  };
  const server = createServer((request, response) => {
    answer(request, origin)
      .then((found) => send(found, response))
      .catch((error: unknown) => {
        // The browser went away in the middle, or the file did; the page reports what it lacks.
        response.destroy(error instanceof Error ? error : undefined);
      });
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(0, '127.0.0.1', resolve);
  });
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('the server has no port');
  const origin = `http://127.0.0.1:${address.port}`;
  return {
    origin,
    close: () =>
      new Promise((resolve) => {
        server.close(() => {
          resolve();
        });
        server.closeAllConnections();
      }),
  };
};
