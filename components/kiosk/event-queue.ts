import type { JobEvent } from '@/lib/job';

/** What became of one batch sent to the store. */
export type Delivery =
  | { readonly kind: 'stored' }
  /** Network or server trouble: the same batch is sent again later. */
  | { readonly kind: 'unreachable' }
  /** Nobody is signed on any more: sent again once somebody is. */
  | { readonly kind: 'signOn' }
  /** The store said no and stored nothing of it. `overtaken`: only since somebody else wrote to the job before. */
  | { readonly kind: 'refused'; readonly message: string; readonly overtaken?: boolean };

export interface QueueParts {
  readonly deliver: (events: readonly JobEvent[]) => Promise<Delivery>;
  readonly wait: (ms: number) => Promise<void>;
  readonly onChange: (pending: number) => void;
  readonly onSignOnNeeded: () => void;
  /**
   * What waited was dropped; the job must be read again from the store. `overtaken` is what may be put on top of it
   * once more: nothing of it was ever stored.
   */
  readonly onRefused: (message: string, overtaken: readonly JobEvent[]) => void;
}

/** Longest batch that the store takes at once. */
const most = 50;
const backoffMs = [500, 1_000, 2_000, 4_000, 8_000, 15_000] as const;

/**
 * Sends events to the store in their order, one batch at a time, as often as it takes. Event ids make a batch that
 * was stored without us learning of it harmless to send again.
 */
export class EventQueue {
  readonly #parts: QueueParts;
  #waiting: readonly JobEvent[] = [];
  #sending = false;
  #stopped = false;
  #failures = 0;

  constructor(parts: QueueParts) {
    this.#parts = parts;
  }

  get pending(): number {
    return this.#waiting.length;
  }

  push(events: readonly JobEvent[]): void {
    if (events.length === 0) return;
    this.#waiting = [...this.#waiting, ...events];
    this.#parts.onChange(this.pending);
    void this.#send();
  }

  /** After somebody signed on again, or the network is said to be back. */
  resume(): void {
    void this.#send();
  }

  stop(): void {
    this.#stopped = true;
  }

  async #send(): Promise<void> {
    if (this.#sending) return;
    this.#sending = true;
    try {
      while (this.#waiting.length > 0 && !this.#stopped) {
        if (!(await this.#sendBatch(this.#waiting.slice(0, most)))) return;
      }
    } finally {
      this.#sending = false;
    }
  }

  /** False: stop for now. */
  async #sendBatch(batch: readonly JobEvent[]): Promise<boolean> {
    const delivery = await this.#parts.deliver(batch);
    switch (delivery.kind) {
      case 'stored':
        this.#failures = 0;
        this.#waiting = this.#waiting.slice(batch.length);
        this.#parts.onChange(this.pending);
        return true;
      case 'unreachable': {
        const pause = backoffMs[Math.min(this.#failures, backoffMs.length - 1)] ?? 15_000;
        this.#failures += 1;
        await this.#parts.wait(pause);
        return true;
      }
      case 'signOn':
        this.#parts.onSignOnNeeded();
        return false;
      case 'refused': {
        const dropped = this.#waiting;
        this.#waiting = [];
        this.#parts.onChange(0);
        this.#parts.onRefused(delivery.message, delivery.overtaken === true ? dropped : []);
        return false;
      }
    }
  }
}
