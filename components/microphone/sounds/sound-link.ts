import { z } from 'zod';
import { kindScores, soundKinds, type KindScores } from '@/lib/sound';
import type { FromSounds, SoundModelFacts, ToSounds } from './protocol';
import { errorText } from '@/lib/result';

/** Tells what is in a window of sound; undefined when it cannot, or not in time. */
export interface SoundTeller {
  readonly ready: boolean;
  tell(samples: Float32Array<ArrayBuffer>, limitMs: number): Promise<KindScores | undefined>;
}

const factsSchema = z.object({
  name: z.string(),
  url: z.string().startsWith('/'),
  bytes: z.number().int().positive(),
  sha256: z.string().length(64),
  kinds: z.record(z.string(), z.enum(soundKinds)),
});

const soundFacts = async (base: string): Promise<SoundModelFacts | undefined> => {
  const response = await fetch(`${base}/sound.json`, { cache: 'no-store' });
  if (!response.ok) return undefined;
  const facts = factsSchema.safeParse(await response.json());
  return facts.success ? facts.data : undefined;
};

/** The classifier in a worker of its own, so that neither it nor its policy touches the recogniser. */
export class SoundLink implements SoundTeller {
  readonly #rateHz: number;
  readonly #onChange: (ready: boolean, detail?: string) => void;
  readonly #waiting = new Map<number, (scores: KindScores | undefined) => void>();
  #worker: Worker | undefined;
  #facts: SoundModelFacts | undefined;
  #ready = false;
  #count = 0;

  /** `onChange`: it can tell from now on, or it cannot, and why. */
  constructor(rateHz: number, onChange: (ready: boolean, detail?: string) => void) {
    this.#rateHz = rateHz;
    this.#onChange = onChange;
  }

  get ready(): boolean {
    return this.#ready;
  }

  async load(base: string): Promise<void> {
    try {
      this.#facts = await soundFacts(base);
    } catch (error) {
      this.#fail(errorText(error));
      return;
    }
    if (this.#facts === undefined) {
      this.#fail('the server has no classifier');
      return;
    }
    this.#worker = new Worker(`${base}/sounds.js`);
    this.#worker.onmessage = ({ data }: MessageEvent<FromSounds>) => {
      this.#receive(data);
    };
    this.#worker.onerror = ({ message }) => {
      this.#fail(message);
    };
    this.#send({ kind: 'load', base, model: this.#facts });
  }

  tell(samples: Float32Array<ArrayBuffer>, limitMs: number): Promise<KindScores | undefined> {
    if (!this.#ready) return Promise.resolve(undefined);
    const id = (this.#count += 1);
    return new Promise((resolve) => {
      const timer = setTimeout(() => {
        this.#answer(id, undefined);
      }, limitMs);
      this.#waiting.set(id, (scores) => {
        clearTimeout(timer);
        resolve(scores);
      });
      this.#send({ kind: 'window', id, samples, sampleRateHz: this.#rateHz }, [samples.buffer]);
    });
  }

  #send(message: ToSounds, transfer: Transferable[] = []): void {
    this.#worker?.postMessage(message, transfer);
  }

  #receive(message: FromSounds): void {
    switch (message.kind) {
      case 'loaded':
        this.#ready = true;
        this.#onChange(true);
        return;
      case 'failed':
        this.#fail(message.detail);
        return;
      case 'classified':
        this.#answer(message.id, kindScores(message.labelled, this.#facts?.kinds ?? {}));
        return;
    }
  }

  #answer(id: number, scores: KindScores | undefined): void {
    this.#waiting.get(id)?.(scores);
    this.#waiting.delete(id);
  }

  /** It is over; hearing goes on without it. */
  #fail(detail: string): void {
    this.#worker?.terminate();
    this.#worker = undefined;
    this.#ready = false;
    for (const id of [...this.#waiting.keys()]) this.#answer(id, undefined);
    this.#onChange(false, detail);
  }
}
