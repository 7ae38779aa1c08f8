import type { DeafnessReason } from './failure';
import type { BayNoise, FromWorker, Grammar, ModelFacts, ToWorker, Utterance } from './protocol';
import type { Word } from '@/lib/voice';

export interface LinkEvents {
  loading(loaded: number, total: number): void;
  loaded(): void;
  failed(reason: DeafnessReason, detail: string): void;
  level(level: Extract<FromWorker, { kind: 'level' }>): void;
  utterance(utterance: Utterance): void;
  noise(noise: BayNoise): void;
  bargeIn(): void;
  dictated(words: readonly Word[], clip: Blob): void;
}

const pingEveryMs = 2_000;
const silentLimitMs = 8_000;

/** One life of the recogniser's worker. When it fails it is over; a new one is made. */
export class RecogniserLink {
  readonly #worker: Worker;
  readonly #events: LinkEvents;
  readonly #watch: ReturnType<typeof setInterval>;
  readonly #flushes = new Map<number, (atS: number | undefined) => void>();
  #fed: (() => void)[] = [];
  #lastHeardFromMs = performance.now();
  #count = 0;
  #over = false;

  constructor(workerUrl: string, events: LinkEvents) {
    this.#events = events;
    this.#worker = new Worker(workerUrl);
    this.#worker.onmessage = ({ data }: MessageEvent<FromWorker>) => {
      this.#receive(data);
    };
    this.#worker.onerror = (event) => {
      this.#fail('workerDead', event.message);
    };
    this.#watch = setInterval(() => {
      if (performance.now() - this.#lastHeardFromMs > silentLimitMs)
        this.#fail('workerDead', 'no answer');
      else this.#send({ kind: 'ping', id: (this.#count += 1) });
    }, pingEveryMs);
  }

  load(model: ModelFacts, sampleRateHz: number): void {
    this.#send({ kind: 'load', model, sampleRateHz });
  }

  listenFor(generation: number, grammars: readonly Grammar[]): void {
    this.#send({ kind: 'grammars', generation, grammars });
  }

  microphone(port: MessagePort): void {
    this.#send({ kind: 'microphone', port }, [port]);
  }

  mute(muted: boolean): void {
    this.#send({ kind: 'mute', muted });
  }

  dictate(limitS: number): void {
    this.#send({ kind: 'dictate', limitS });
  }

  endDictation(): void {
    this.#send({ kind: 'endDictation' });
  }

  /** Hands over a stretch of a recording; settles when all of it has been listened to. */
  feed(samples: Float32Array<ArrayBuffer>): Promise<void> {
    if (this.#over) return Promise.resolve();
    return new Promise((resolve) => {
      this.#fed.push(resolve);
      this.#send({ kind: 'recording', samples }, [samples.buffer]);
    });
  }

  /** Ends what is being said; settles when everything before it is done, with the time; undefined when the worker is over. */
  flush(): Promise<number | undefined> {
    if (this.#over) return Promise.resolve(undefined);
    return new Promise((resolve) => {
      const id = (this.#count += 1);
      this.#flushes.set(id, resolve);
      this.#send({ kind: 'flush', id });
    });
  }

  end(): void {
    this.#over = true;
    clearInterval(this.#watch);
    this.#worker.terminate();
    for (const resolve of this.#fed) resolve();
    for (const resolve of this.#flushes.values()) resolve(undefined);
    this.#fed = [];
    this.#flushes.clear();
  }

  #send(message: ToWorker, transfer: Transferable[] = []): void {
    this.#worker.postMessage(message, transfer);
  }

  #fail(reason: DeafnessReason, detail: string): void {
    if (this.#over) return;
    this.end();
    this.#events.failed(reason, detail);
  }

  #receive(message: FromWorker): void {
    // Messages already under way when the link was ended.
    if (this.#over) return;
    this.#lastHeardFromMs = performance.now();
    switch (message.kind) {
      case 'loading':
        this.#events.loading(message.loaded, message.total);
        return;
      case 'loaded':
        this.#events.loaded();
        return;
      case 'failed':
        this.#fail(message.reason, message.detail);
        return;
      case 'level':
        this.#events.level(message);
        return;
      case 'utterance':
        this.#events.utterance(message.utterance);
        return;
      case 'noise':
        this.#events.noise(message.noise);
        return;
      case 'bargeIn':
        this.#events.bargeIn();
        return;
      case 'dictated':
        this.#events.dictated(message.words, new Blob([message.clip], { type: 'audio/wav' }));
        return;
      case 'fed':
        this.#fed.shift()?.();
        return;
      case 'flushed':
        this.#flushes.get(message.id)?.(message.atS);
        this.#flushes.delete(message.id);
        return;
      case 'pong':
        return;
    }
  }
}
