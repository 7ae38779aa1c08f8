import type { DeafnessReason } from './failure';
import { modelFacts } from './model-facts';
import { RecogniserLink, type LinkEvents } from './recogniser-link';
import { sampleRateHz } from './sound';

const restartAfterMs = [500, 2_000, 10_000, 60_000] as const;
/** Living this long, a worker has earned a quick restart again. */
const steadyMs = 60_000;

export interface LifeEvents extends Pick<
  LinkEvents,
  'loading' | 'level' | 'utterance' | 'noise' | 'bargeIn' | 'dictated'
> {
  /** The model is there. */
  ready(link: RecogniserLink): void;
  /** The worker is over; a dead one is started again by itself, after a missing or damaged model only by `begin`. */
  failed(reason: DeafnessReason): void;
}

/** Keeps one recogniser alive: loads it, and starts it again when it dies, ever more slowly. */
export class RecogniserLife {
  readonly #base: string;
  readonly #events: LifeEvents;
  #link: RecogniserLink | undefined;
  #ready = false;
  #deaths = 0;
  #readySinceMs = 0;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #waiting: (() => void)[] = [];

  constructor(base: string, events: LifeEvents) {
    this.#base = base;
    this.#events = events;
  }

  /** The recogniser, once it listens. */
  get link(): RecogniserLink | undefined {
    return this.#ready ? this.#link : undefined;
  }

  begin(): void {
    clearTimeout(this.#timer);
    if (this.#link === undefined) void this.#load();
  }

  /** Settles with the recogniser when it listens, or with nothing when it cannot. */
  async becomeReady(): Promise<RecogniserLink | undefined> {
    if (!this.#ready) {
      const settled = new Promise<void>((resolve) => {
        this.#waiting.push(resolve);
      });
      this.begin();
      await settled;
    }
    return this.link;
  }

  end(): void {
    this.#deaths = 0;
    this.#letGo();
  }

  async #load(): Promise<void> {
    this.#events.loading(0, 1);
    const link = this.#newLink();
    this.#link = link;
    const facts = await modelFacts(this.#base);
    if (this.#link !== link) return;
    if (facts.ok) link.load(facts.value, sampleRateHz);
    else this.#fail(facts.error);
  }

  #newLink(): RecogniserLink {
    const { loading, level, utterance, noise, bargeIn, dictated } = this.#events;
    const link: RecogniserLink = new RecogniserLink(`${this.#base}/worker.js`, {
      loading,
      level,
      utterance,
      noise,
      bargeIn,
      dictated,
      loaded: () => {
        this.#ready = true;
        this.#readySinceMs = performance.now();
        this.#events.ready(link);
        this.#settle();
      },
      failed: (reason) => {
        this.#fail(reason);
      },
    });
    return link;
  }

  #fail(reason: DeafnessReason): void {
    const lived = this.#ready && performance.now() - this.#readySinceMs > steadyMs;
    this.#letGo();
    if (lived) this.#deaths = 0;
    if (reason === 'workerDead') {
      const waitMs = restartAfterMs[Math.min(this.#deaths, restartAfterMs.length - 1)];
      this.#deaths += 1;
      this.#timer = setTimeout(() => {
        this.begin();
      }, waitMs);
    }
    this.#events.failed(reason);
  }

  #letGo(): void {
    clearTimeout(this.#timer);
    this.#link?.end();
    this.#link = undefined;
    this.#ready = false;
    this.#settle();
  }

  #settle(): void {
    for (const resolve of this.#waiting) resolve();
    this.#waiting = [];
  }
}
