import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { once } from 'node:events';
import type { AddressInfo } from 'node:net';
import { buffer } from 'node:stream/consumers';
import { setTimeout } from 'node:timers/promises';
import type { Chance } from '../../../demo/month/chance';

type Ill = 'through' | 'lostThere' | 'lostBack' | 'late' | 'twice' | 'againLater';

/** How often what was done to a request. */
export type Ills = Record<Ill, number>;

interface Forwarded {
  readonly status: number;
  readonly headers: Headers;
  readonly body: Buffer;
}

/** Between kiosks and a server: loses requests and answers, keeps them back, sends them twice, and long after. */
export class BadNetwork {
  readonly ills: Ills = { through: 0, lostThere: 0, lostBack: 0, late: 0, twice: 0, againLater: 0 };
  readonly #target: string;
  readonly #random: Chance;
  readonly #later = new Set<Promise<unknown>>();
  readonly #server = createServer((request, response) => void this.#pass(request, response));

  constructor(target: string, random: Chance) {
    this.#target = target;
    this.#random = random;
  }

  async open(): Promise<string> {
    this.#server.listen(0, '127.0.0.1');
    await once(this.#server, 'listening');
    return `http://127.0.0.1:${(this.#server.address() as AddressInfo).port}`;
  }

  /** Waits for what is still on the way. */
  async close(): Promise<void> {
    await Promise.allSettled(this.#later);
    this.#server.closeAllConnections();
    this.#server.close();
  }

  async #forward(request: IncomingMessage, body: Buffer): Promise<Forwarded> {
    const { cookie = '', 'content-type': type = '' } = request.headers;
    const response = await fetch(`${this.#target}${request.url ?? '/'}`, {
      method: request.method ?? 'GET',
      headers: { cookie, 'content-type': type, origin: this.#target },
      ...(body.length === 0 ? {} : { body: new Uint8Array(body) }),
    });
    const answered = Buffer.from(await response.arrayBuffer());
    return { status: response.status, headers: response.headers, body: answered };
  }

  async #pass(request: IncomingMessage, response: ServerResponse): Promise<void> {
    try {
      const body = await buffer(request);
      const ill = this.#random.weighted<Ill>([
        ['through', 50],
        ['lostThere', 10],
        ['lostBack', 12],
        ['late', 12],
        ['twice', 8],
        ['againLater', 8],
      ]);
      this.ills[ill] += 1;
      if (ill === 'lostThere') return void response.destroy();
      if (ill === 'late') await setTimeout(this.#random.between(1, 60));
      if (ill === 'twice') await this.#forward(request, body);
      const { status, headers, body: answered } = await this.#forward(request, body);
      if (ill === 'lostBack') return void response.destroy();
      if (ill === 'againLater') {
        const again = setTimeout(this.#random.between(5, 300)).then(() =>
          this.#forward(request, body),
        );
        this.#later.add(again);
      }
      const cookies = headers.getSetCookie().flatMap((cookie) => ['set-cookie', cookie]);
      response
        .writeHead(status, [
          'content-type',
          headers.get('content-type') ?? 'text/plain',
          ...cookies,
        ])
        .end(answered);
    } catch {
      response.destroy(); // neither end hears more of it than that
    }
  }
}
