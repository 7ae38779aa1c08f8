import { randomBytes } from 'node:crypto';
import type { JobState } from '../job';
import type { Store } from '../store';
import { beatEveryMs, positionText, type Position, type WallMessage } from '../wall';
import { log } from './log';
import { WallShop } from './wall-shop';

/** So many walls and phones at once; more are turned away. */
export const mostListeners = 200;

/** Changes that come at once go out together. */
const gatherMs = 20;
/** The shop is looked at again for what nobody told, and for how time has gone on, this often in beats. */
const beatsToRead = 6;
/** Who takes nothing for so long has gone. */
const stuckBeats = 12;

interface Listener {
  version: number;
  /** Beats since it last took something. */
  stuck: number;
  readonly controller: ReadableStreamDefaultController<Uint8Array>;
}

const encoder = new TextEncoder();

/** One message of the stream (WHATWG HTML, server-sent events). */
const frame = (position: Position, message: WallMessage): Uint8Array =>
  encoder.encode(`id: ${positionText(position)}\ndata: ${JSON.stringify(message)}\n\n`);

/**
 * Tells walls and phones how the shop stands. Each listener is sent the bays that changed since what it has, when it
 * has taken what it was sent; so neither a slow one nor a long time makes anything grow.
 */
export class WallHub {
  readonly #run = randomBytes(6).toString('hex');
  readonly #now: () => Date;
  readonly #shop: WallShop;
  readonly #listeners = new Set<Listener>();
  #reading: Promise<void> | undefined;
  #gathering: NodeJS.Timeout | undefined;
  #beating: NodeJS.Timeout | undefined;
  #beats = 0;

  constructor(store: Store, now: () => Date) {
    this.#now = now;
    this.#shop = new WallShop(store, now, () => {
      this.#gather();
    });
  }

  get listeners(): number {
    return this.#listeners.size;
  }

  /** A job has gone on, on disk. */
  stored(state: JobState): void {
    // Before anybody looked nothing is kept: the first to look has it read from the store.
    if (this.#reading !== undefined) this.#shop.stored(state);
  }

  present(bay: string, cannotBeHeard: string | undefined): void {
    this.#shop.present(bay, cannotBeHeard);
  }

  /** The stream for one more listener, from where it stood. */
  async listen(after: Position | undefined): Promise<ReadableStream<Uint8Array>> {
    this.#reading = this.#shop.read();
    await this.#reading;
    this.#shop.noticeSilence();
    const known = after?.run === this.#run && after.version <= this.#shop.version;
    let listener: Listener | undefined;
    return new ReadableStream<Uint8Array>(
      {
        start: (controller) => {
          listener = { version: known ? after.version : 0, stuck: 0, controller };
          this.#listeners.add(listener);
          this.#beat();
          controller.enqueue(encoder.encode('retry: 1000\n\n'));
          if (!known) this.#sendWhole(listener);
          else if (!this.#sendChanges(listener)) this.#send(listener, this.#aBeat());
        },
        pull: () => {
          if (listener === undefined) return;
          listener.stuck = 0;
          this.#sendChanges(listener);
        },
        cancel: () => {
          if (listener !== undefined) this.#drop(listener);
        },
      },
      { highWaterMark: 4 },
    );
  }

  #aBeat(): WallMessage {
    return { kind: 'beat', now: this.#now().toISOString() };
  }

  #send(listener: Listener, message: WallMessage): void {
    const { version } = this.#shop;
    listener.version = version;
    listener.controller.enqueue(frame({ run: this.#run, version }, message));
  }

  #sendWhole(listener: Listener): void {
    this.#send(listener, {
      kind: 'whole',
      now: this.#now().toISOString(),
      shop: this.#shop.name,
      order: [...this.#shop.order],
      bays: [...this.#shop.changedAfter(0)],
    });
  }

  /** Whether there was something to send that could be sent. */
  #sendChanges(listener: Listener): boolean {
    if (listener.version >= this.#shop.version || (listener.controller.desiredSize ?? 0) <= 0)
      return false;
    const bays = [...this.#shop.changedAfter(listener.version)];
    this.#send(listener, { kind: 'some', now: this.#now().toISOString(), bays });
    return true;
  }

  #gather(): void {
    if (this.#listeners.size === 0 || this.#gathering !== undefined) return;
    this.#gathering = setTimeout(() => {
      this.#gathering = undefined;
      for (const listener of this.#listeners) this.#sendChanges(listener);
    }, gatherMs);
  }

  #beat(): void {
    this.#beating ??= setInterval(() => {
      this.#beats += 1;
      if (this.#beats % beatsToRead === 0) {
        this.#shop.touchRunning();
        this.#shop.read().catch((error: unknown) => {
          log.error({ err: error }, 'the wall could not read the store');
        });
      }
      this.#shop.noticeSilence();
      for (const listener of this.#listeners) this.#beatTo(listener);
    }, beatEveryMs).unref();
  }

  #beatTo(listener: Listener): void {
    if ((listener.controller.desiredSize ?? 0) > 0) {
      if (listener.version >= this.#shop.version) this.#send(listener, this.#aBeat());
      return;
    }
    listener.stuck += 1;
    if (listener.stuck < stuckBeats) return;
    this.#drop(listener);
    listener.controller.error(new Error('nothing was taken for a minute'));
  }

  #drop(listener: Listener): void {
    this.#listeners.delete(listener);
    if (this.#listeners.size > 0) return;
    clearInterval(this.#beating);
    this.#beating = undefined;
  }
}
