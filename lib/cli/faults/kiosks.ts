import { appendFileSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { hashPin } from '../../access';
import type { JobEvent } from '../../job';
import { canonicalJson, openStore } from '../../store';
import { databaseFile } from '../../store/files';
import { toAndFro } from '../bench-appends';
import { setUpWallShop, type BenchJob } from '../bench-wall-shop';

export const faultPin = '2468';

/** A shop of its own for a series of faults, and the list of what its kiosks were told is stored. */
export interface FaultShop {
  readonly folder: string;
  /** A line for each acknowledged event: its id and its text. */
  readonly acknowledged: string;
  readonly jobs: readonly BenchJob[];
}

export const setUpFaultShop = async (folder: string, kiosks: number): Promise<FaultShop> => {
  mkdirSync(folder, { recursive: true });
  const store = await openStore(databaseFile(folder));
  if (!store.ok) throw new Error(store.error);
  const hash = await hashPin(faultPin, { logN: 4, r: 8, p: 1 });
  const people = Array.from({ length: kiosks }, (_, n) => [`mechanic-${n + 1}`, hash] as const);
  const jobs = await setUpWallShop(store.value, kiosks, new Date(), {
    stories: false,
    pinHashes: Object.fromEntries(people),
  });
  await store.value.close();
  return { folder, acknowledged: join(folder, 'acknowledged.txt'), jobs };
};

/** What came back: a status and what it said, or nothing at all. */
export type Came =
  | { readonly status: number; readonly body: string; readonly cookies: readonly string[] }
  | undefined;

/** Asks a server once. So long without an answer counts as none. */
export const ask = async (
  address: string,
  path: string,
  {
    method = 'POST',
    headers = {},
    body,
    limitMs = 30_000,
  }: {
    readonly method?: string;
    readonly headers?: Readonly<Record<string, string>>;
    readonly body?: string | undefined;
    readonly limitMs?: number;
  },
): Promise<Came> => {
  try {
    const response = await fetch(`${address}${path}`, {
      method,
      headers: { 'content-type': 'application/json', origin: address, ...headers },
      ...(body === undefined ? {} : { body }),
      signal: AbortSignal.timeout(limitMs),
    });
    const text = await response.text();
    return { status: response.status, body: text, cookies: response.headers.getSetCookie() };
  } catch {
    return undefined; // cut off, or no answer in time
  }
};

/** What was counted while kiosks wrote. */
export interface Written {
  acknowledged: number;
  /** Sent again because no answer came, or the one before had not arrived. */
  again: number;
  signedOn: number;
}

/** How a kiosk finds the server as it is now. */
export interface Way {
  readonly address: () => string | Promise<string>;
  readonly onStored?: (count: number) => void;
}

const cookiesOf = (job: BenchJob, given: readonly string[]): string => {
  const all = new Map(
    [...job.cookie.split('; '), ...given.map((one) => one.split(';')[0] ?? '')].map((one) => {
      const at = one.indexOf('=');
      return [one.slice(0, at), one.slice(at + 1)];
    }),
  );
  return [...all].map(([name, value]) => `${name}=${value}`).join('; ');
};

const signOn = async (way: Way, job: BenchJob): Promise<string> => {
  const body = JSON.stringify({ person: job.person.id, pin: faultPin, bay: job.bay });
  const came = await ask(await way.address(), '/api/session', {
    headers: { cookie: job.cookie },
    body,
  });
  return came?.status === 200 ? cookiesOf(job, came.cookies) : job.cookie;
};

/** A kiosk that keeps what it has written until it is told that it is stored. */
export class FaultKiosk {
  readonly #job: BenchJob;
  readonly #shop: FaultShop;
  readonly #way: Way;
  readonly #written: Written;
  #cookie: string;

  constructor(job: BenchJob, shop: FaultShop, way: Way, written: Written) {
    this.#job = job;
    this.#shop = shop;
    this.#way = way;
    this.#written = written;
    this.#cookie = job.cookie;
  }

  /** Writes so many events at once, the later ones without waiting for those before. */
  async write(together: number): Promise<void> {
    const events = Array.from({ length: together }, () => toAndFro(this.#job, Date.now()));
    await Promise.all(events.map((event) => this.#store(event)));
  }

  async #store(event: JobEvent): Promise<void> {
    const path = `/api/jobs/${event.job}/events`;
    const body = JSON.stringify({ events: [event] });
    for (let tries = 0; tries < 500; tries += 1) {
      const headers = { cookie: this.#cookie };
      const came = await ask(await this.#way.address(), path, { headers, body });
      if (came?.status === 200) {
        this.#written.acknowledged += 1;
        appendFileSync(this.#shop.acknowledged, `${event.id} ${canonicalJson(event)}\n`);
        this.#way.onStored?.(this.#written.acknowledged);
        return;
      }
      if (came?.status === 401) {
        this.#cookie = await signOn(this.#way, { ...this.#job, cookie: this.#cookie });
        this.#written.signedOn += 1;
        continue;
      }
      // 409: the event before has not arrived yet. 503: the server is just starting.
      if (came !== undefined && came.status !== 409 && came.status !== 503)
        throw new Error(`event ${event.seq} was answered with ${came.status}: ${came.body}`);
      this.#written.again += 1;
      await setTimeout(2 + Math.min(tries, 20));
    }
    throw new Error(`event ${event.seq} of job ${event.job} could not be stored`);
  }
}
