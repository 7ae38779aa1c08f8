import { pauseBeforeMs, stalledAfterMs, wallMessageSchema, type WallMessage } from '@/lib/wall';

/** A stream that was begun, as far as it can be ended. */
export interface Source {
  readonly close: () => void;
}

export interface StreamParts {
  readonly open: (address: string, hear: (data: unknown, lastEventId: string) => void) => Source;
  readonly now: () => number;
  readonly onMessage: (message: WallMessage, position: string | undefined, atMs: number) => void;
}

const parse = (data: unknown): WallMessage | undefined => {
  try {
    const parsed = wallMessageSchema.safeParse(JSON.parse(String(data)));
    return parsed.success ? parsed.data : undefined;
  } catch {
    return undefined; // cut off, or from another version of the server: the whole is asked for again
  }
};

/**
 * Keeps listening to the shop, for weeks. Whatever goes wrong shows as silence, and silence is told by the clock when
 * `check` is called: however seldom a browser lets timers run, the stream is then begun anew from where it stood.
 */
export class WallStream {
  readonly #parts: StreamParts;
  #source: Source | undefined;
  #position: string | undefined;
  /** When the stream was begun or last heard, whichever is later. */
  #aliveAtMs = 0;
  #againAtMs = 0;
  #tries = 0;
  #stopped = false;

  constructor(parts: StreamParts) {
    this.#parts = parts;
  }

  /** To be called now and then, and when the network or the page comes back. */
  check(): void {
    if (this.#stopped) return;
    const now = this.#parts.now();
    if (now < this.#aliveAtMs) this.#aliveAtMs = now; // the clock was set back
    if (this.#source !== undefined && now - this.#aliveAtMs > stalledAfterMs) this.#giveUp(now);
    if (this.#againAtMs - now > pauseBeforeMs(100)) this.#againAtMs = now;
    if (this.#source === undefined && now >= this.#againAtMs) this.#begin(now);
  }

  stop(): void {
    this.#stopped = true;
    this.#close();
  }

  #begin(now: number): void {
    const after =
      this.#position === undefined ? '' : `?after=${encodeURIComponent(this.#position)}`;
    this.#aliveAtMs = now;
    const source = this.#parts.open(`/api/wall${after}`, (data, lastEventId) => {
      if (source === this.#source) this.#hear(data, lastEventId);
    });
    this.#source = source;
  }

  #hear(data: unknown, lastEventId: string): void {
    const now = this.#parts.now();
    const message = parse(data);
    if (message === undefined) {
      this.#position = undefined;
      this.#giveUp(now);
      return;
    }
    this.#aliveAtMs = now;
    this.#tries = 0;
    if (lastEventId !== '') this.#position = lastEventId;
    this.#parts.onMessage(message, this.#position, now);
  }

  #giveUp(now: number): void {
    this.#close();
    this.#againAtMs = now + pauseBeforeMs(this.#tries);
    this.#tries += 1;
  }

  #close(): void {
    this.#source?.close();
    this.#source = undefined;
  }
}
