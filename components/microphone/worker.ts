import { Dictation, usualDictationRules } from './dictation';
import { loadEngine, type Engine } from './engine';
import type { DeafnessReason } from './failure';
import { JobLine } from './job-line';
import { Listener } from './listener';
import {
  fetchModel,
  forgetUnpacked,
  ModelProblem,
  noteUnpacked,
  unpackedModel,
} from './model-file';
import type { FromWorker, ModelFacts, ToWorker } from './protocol';
import { decibel, frameSamples, powerOf } from './sound';

// The worker's own globals; the DOM library declares the page's.
interface WorkerScope {
  onmessage: ((event: MessageEvent<ToWorker>) => void) | null;
  postMessage(message: FromWorker, transfer?: Transferable[]): void;
}
const scope = globalThis as unknown as WorkerScope;

const framesPerLevel = 5;
/** A slow machine may take this long to unpack and build a model, and more for each byte of a large one. */
const loadLimitMs = (bytes: number): number => 60_000 + bytes / 1000;

const tell = (message: FromWorker, transfer?: Transferable[]): void => {
  scope.postMessage(message, transfer);
};

const now = (): number => performance.timeOrigin + performance.now();

const fail = (reason: DeafnessReason, error: unknown): void => {
  tell({ kind: 'failed', reason, detail: error instanceof Error ? error.message : String(error) });
};

/** Everything that happens once the model is there; one job at a time. */
class Hearing {
  readonly #engine: Engine;
  readonly #rateHz: number;
  readonly #listener: Listener;
  readonly #jobs = new JobLine((error) => {
    fail('workerDead', error);
  });
  #muted = false;
  #recording = false;
  #dictation: Dictation | undefined;
  #levels: number[] = [];

  constructor(engine: Engine, rateHz: number) {
    this.#engine = engine;
    this.#rateHz = rateHz;
    this.#listener = new Listener({
      engine,
      rateHz,
      emit: (utterance) => {
        tell({ kind: 'utterance', utterance });
      },
      now,
    });
  }

  listenFor(message: Extract<ToWorker, { kind: 'grammars' }>): void {
    this.#jobs.add(async () => {
      this.#listener.listenFor(message.generation, message.grammars);
      await Promise.resolve();
    });
  }

  fromMicrophone(frame: Float32Array): void {
    this.#jobs.add(async () => {
      if (!this.#recording) await this.#hear(frame);
    });
  }

  fromRecording(samples: Float32Array): void {
    this.#jobs.add(async () => {
      if (!this.#recording) {
        await this.#listener.drop();
        this.#listener.newSource();
        this.#recording = true;
      }
      for (let at = 0; at < samples.length; at += frameSamples)
        await this.#hear(samples.slice(at, at + frameSamples));
      tell({ kind: 'fed', samples: samples.length });
    });
  }

  mute(muted: boolean): void {
    this.#jobs.add(async () => {
      if (muted && !this.#muted) await this.#listener.drop();
      this.#muted = muted;
    });
  }

  dictate(limitS: number): void {
    this.#jobs.add(async () => {
      await this.#listener.drop();
      this.#dictation ??= new Dictation(this.#engine, this.#rateHz, {
        ...usualDictationRules,
        limitS,
      });
    });
  }

  endDictation(): void {
    this.#jobs.add(() => this.#endDictation());
  }

  flush(id: number): void {
    this.#jobs.add(async () => {
      if (this.#dictation === undefined) await this.#listener.flush();
      else await this.#endDictation();
      this.#recording = false;
      this.#listener.newSource();
      tell({ kind: 'flushed', id, atS: this.#listener.atS });
    });
  }

  async #hear(frame: Float32Array): Promise<void> {
    const arrivedMs = now();
    if (this.#muted) {
      await this.#listener.skip(frame);
    } else if (this.#dictation === undefined) {
      await this.#listener.hear(frame);
    } else {
      await this.#listener.skip(frame);
      if (await this.#dictation.hear(frame)) await this.#endDictation();
    }
    this.#meter(frame, arrivedMs);
  }

  async #endDictation(): Promise<void> {
    if (this.#dictation === undefined) return;
    const { words, clip } = await this.#dictation.end();
    this.#dictation = undefined;
    tell({ kind: 'dictated', words, clip }, [clip]);
  }

  #meter(frame: Float32Array, arrivedMs: number): void {
    this.#levels.push(powerOf(frame));
    if (this.#levels.length < framesPerLevel) return;
    const power = this.#levels.reduce((sum, one) => sum + one, 0) / this.#levels.length;
    this.#levels = [];
    tell({
      kind: 'level',
      levelDb: decibel(power),
      backgroundDb: this.#listener.backgroundDb,
      speaking: this.#listener.speaking,
      stillS: this.#listener.stillS,
      atS: this.#listener.atS,
      arrivedMs,
    });
  }
}

/** From the browser's store of unpacked models when this very one is there; fetched and checked otherwise. */
const loadModel = async (model: ModelFacts, rateHz: number): Promise<Engine> => {
  const limitMs = loadLimitMs(model.bytes);
  if ((await unpackedModel()) !== model.url) {
    await forgetUnpacked();
    await fetchModel(model, (loaded, total) => {
      tell({ kind: 'loading', loaded, total });
    });
  }
  tell({ kind: 'loading', loaded: model.bytes, total: model.bytes });
  try {
    const engine = await loadEngine(model.url, rateHz, limitMs);
    await noteUnpacked(model.url);
    return engine;
  } catch (error) {
    await forgetUnpacked();
    throw new ModelProblem('modelCorrupt', error instanceof Error ? error.message : String(error));
  }
};

let hearing: Hearing | undefined;

const begin = async ({
  model,
  sampleRateHz: rateHz,
}: Extract<ToWorker, { kind: 'load' }>): Promise<void> => {
  try {
    hearing = new Hearing(await loadModel(model, rateHz), rateHz);
    tell({ kind: 'loaded' });
  } catch (error) {
    fail(error instanceof ModelProblem ? error.reason : 'workerDead', error);
  }
};

scope.onmessage = ({ data }) => {
  switch (data.kind) {
    case 'load':
      void begin(data);
      return;
    case 'grammars':
      hearing?.listenFor(data);
      return;
    case 'microphone':
      data.port.onmessage = (event: MessageEvent<Float32Array>) =>
        hearing?.fromMicrophone(event.data);
      return;
    case 'recording':
      hearing?.fromRecording(data.samples);
      return;
    case 'mute':
      hearing?.mute(data.muted);
      return;
    case 'dictate':
      hearing?.dictate(data.limitS);
      return;
    case 'endDictation':
      hearing?.endDictation();
      return;
    case 'flush':
      hearing?.flush(data.id);
      return;
    case 'ping':
      tell({ kind: 'pong', id: data.id });
      return;
  }
};
