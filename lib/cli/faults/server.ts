import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { Readable } from 'node:stream';
import { buffer } from 'node:stream/consumers';
import { pipeline } from 'node:stream/promises';
import { z } from 'zod';
import { answerBy, appRoutes } from './app-routes';

/**
 * Run as a child process: serves the interface of the app without its pages, over the data folder that BAYCALL_DATA
 * names. It tells its port, and jumps its clock by so many milliseconds when it is told to.
 */
const orders = z.object({ jumpMs: z.number() });

const RealDate = Date;
let aheadMs = 0;

/** The clock of a machine on which somebody, or a time server, turns it. */
class TurnedDate extends RealDate {
  constructor(...given: readonly unknown[]) {
    if (given.length === 0) super(RealDate.now() + aheadMs);
    else super(...(given as [number]));
  }
  static override now(): number {
    return RealDate.now() + aheadMs;
  }
}

/** The body is read to its end at once: one that is refused unread would keep its connection from being used again. */
const requestOf = async (incoming: IncomingMessage): Promise<Request> => {
  const headers = new Headers();
  for (const [name, value] of Object.entries(incoming.headers))
    for (const one of [value ?? []].flat()) headers.append(name, one);
  const { method = 'GET', url = '/' } = incoming;
  const hasBody = method !== 'GET' && method !== 'HEAD';
  const body = new Uint8Array(await buffer(incoming));
  return new Request(new URL(url, `http://${incoming.headers.host ?? 'localhost'}`), {
    method,
    headers,
    ...(hasBody ? { body } : {}),
  });
};

const answer = async (response: Response, outgoing: ServerResponse): Promise<void> => {
  const headers = [...response.headers].filter(([name]) => name !== 'set-cookie').flat();
  const cookies = response.headers.getSetCookie().flatMap((cookie) => ['set-cookie', cookie]);
  outgoing.writeHead(response.status, [...headers, ...cookies]);
  if (response.body === null) outgoing.end();
  else await pipeline(Readable.fromWeb(response.body as never), outgoing);
};

const malformed = (): Response => Response.json({ error: { code: 'malformed' } }, { status: 400 });

const routes = appRoutes();

const serve = async (incoming: IncomingMessage, outgoing: ServerResponse): Promise<void> => {
  try {
    const response = await answerBy(routes, await requestOf(incoming));
    await answer(response ?? malformed(), outgoing);
  } catch (error) {
    // Whoever asked has gone, or asked in a way that is no request.
    if (outgoing.headersSent || outgoing.destroyed) outgoing.destroy();
    else outgoing.writeHead(error instanceof TypeError ? 400 : 500).end();
  }
};

const server = createServer((incoming, outgoing) => void serve(incoming, outgoing));
// A connection that is kept is not cut in the moment in which somebody uses it again.
server.keepAliveTimeout = 120_000;
server.listen(0, '127.0.0.1', () => {
  const address = server.address();
  process.send?.({ port: typeof address === 'object' ? address?.port : undefined });
});
process.on('message', (message) => {
  const order = orders.safeParse(message);
  if (!order.success) return;
  aheadMs += order.data.jumpMs;
  globalThis.Date = TurnedDate as unknown as DateConstructor;
  process.send?.({ aheadMs });
});
process.on('disconnect', () => process.exit(0));
