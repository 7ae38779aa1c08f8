import { hashPin } from '@/lib/access';
import type { Happening, JobEvent } from '@/lib/job';
import { shopServer, type Endpoint, type ShopServer } from '@/lib/server';
import { appendForemanEvents } from '@/lib/server/foreman';
import { appendEvents, readJobEvents } from '@/lib/server/jobs';
import { signOn } from '@/lib/server/session';
import { freshStore } from '../store/fresh-store';
import { event, jobId, noon, opened } from '../store/small-shop';

const origin = 'http://kiosk.test:4870';

export interface Answer {
  readonly status: number;
  readonly body: unknown;
  readonly headers: Headers;
}

const answerOf = async (response: Response): Promise<Answer> => {
  const text = await response.text();
  const isJson = response.headers.get('content-type')?.startsWith('application/json') ?? false;
  const body: unknown = isJson ? JSON.parse(text) : text;
  return { status: response.status, body, headers: response.headers };
};

export interface Sent {
  readonly method?: string;
  readonly body?: unknown;
  /** What stands behind the address, with its question mark. */
  readonly query?: string;
  /** In place of `body`, as it is. */
  readonly raw?: RequestInit['body'];
  /** Added to, or with `undefined` taken from, those of our own pages. */
  readonly headers?: Readonly<Record<string, string | undefined>>;
}

/** A kiosk's browser, as far as the server sees it: it keeps cookies and sends what a browser sends. */
export class Kiosk {
  readonly server: ShopServer;
  device = '';
  readonly #cookies = new Map<string, string>();

  constructor(server: ShopServer) {
    this.server = server;
  }

  async send<P>(endpoint: Endpoint<P>, params: P, sent: Sent = {}): Promise<Answer> {
    const headers = new Headers({
      host: 'kiosk.test:4870',
      origin,
      'content-type': 'application/json',
      cookie: [...this.#cookies].map(([name, value]) => `${name}=${value}`).join('; '),
    });
    for (const [name, value] of Object.entries(sent.headers ?? {})) {
      if (value === undefined) headers.delete(name);
      else headers.set(name, value);
    }
    const method = sent.method ?? 'POST';
    const body = sent.raw ?? (sent.body === undefined ? null : JSON.stringify(sent.body));
    const init = { method, headers, ...(method === 'GET' ? {} : { body, duplex: 'half' }) };
    const response = await endpoint(
      this.server,
      new Request(`${origin}/api${sent.query ?? ''}`, init),
      params,
    );
    for (const cookie of response.headers.getSetCookie()) {
      const [, name, value] = /^([^=]+)=([^;]*)/.exec(cookie) ?? [];
      if (name !== undefined && value !== undefined) this.#cookies.set(name, value);
    }
    return answerOf(response);
  }

  async signOn(person: string, pin: string, bay = 'bay-1'): Promise<Answer> {
    const answer = await this.send(signOn, undefined, { body: { person, pin, bay } });
    const { body } = answer;
    if (typeof body === 'object' && body !== null && 'device' in body) {
      this.device = String(body.device);
    }
    return answer;
  }

  /** The event as this kiosk would write it. */
  by(one: JobEvent, who: Partial<JobEvent> = {}): JobEvent {
    return { ...one, device: this.device, ...who };
  }

  append(events: readonly unknown[], sent: Sent = {}, job = jobId(1)): Promise<Answer> {
    return this.send(appendEvents, { job }, { body: { events }, ...sent });
  }

  asForeman(person: string, pin: string, events: readonly JobEvent[]): Promise<Answer> {
    return this.send(appendForemanEvents, { job: jobId(1) }, { body: { person, pin, events } });
  }

  async storedTypes(job = jobId(1)): Promise<readonly string[]> {
    const { body } = await this.send(readJobEvents, { job }, { method: 'GET' });
    const { events } = body as { events: readonly JobEvent[] };
    return events.map(({ happening }) => happening.type);
  }

  foremanEvent(seq: number, happening: Happening): JobEvent {
    return this.by(event(1, seq, happening), { actor: 'finn', role: 'foreman' });
  }
}

const cheap = { logN: 4, r: 8, p: 1 };

/** A server over a new store, with a clock that the test moves. Ada's PIN is 1234, Finn's 5678. */
export const freshServer = async () => {
  const pins = { ada: await hashPin('1234', cheap), finn: await hashPin('5678', cheap) };
  const { store, folder } = await freshStore(pins);
  const clock = { ms: noon.getTime() };
  const hasModel = () => Promise.resolve(true);
  const server = shopServer(store, folder, hasModel, () => new Date(clock.ms));
  return { server, clock, folder, kiosk: new Kiosk(server) };
};

/** The same with Ada signed on in bay 1 and job 1 open there. */
export const openJobServer = async () => {
  const fresh = await freshServer();
  await fresh.kiosk.signOn('ada', '1234');
  await fresh.kiosk.append([fresh.kiosk.by(opened(1))]);
  return fresh;
};

/** The part of an error answer that programs read. */
export const errorOf = ({ status, body }: Answer) => {
  const { error } = body as { error: { code: string; message: string; [more: string]: unknown } };
  return { status, ...error };
};
