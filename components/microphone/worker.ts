import { unknownBay } from '@/lib/sound';
import { loadEngine, type Engine } from './engine';
import type { DeafnessReason } from './failure';
import { Hearing } from './hearing';
import {
  fetchModel,
  forgetUnpacked,
  ModelProblem,
  noteUnpacked,
  unpackedModel,
} from './model-file';
import type { FromWorker, ModelFacts, ToWorker } from './protocol';
import { SoundLink } from './sounds/sound-link';
import { errorText } from '@/lib/result';

// The worker's own globals; the DOM library declares the page's.
interface WorkerScope {
  onmessage: ((event: MessageEvent<ToWorker>) => void) | null;
  postMessage(message: FromWorker, transfer?: Transferable[]): void;
}
const scope = globalThis as unknown as WorkerScope;

/** A slow machine may take this long to unpack and build a model, and more for each byte of a large one. */
const loadLimitMs = (bytes: number): number => 60_000 + bytes / 1000;

const tell = (message: FromWorker, transfer?: Transferable[]): void => {
  scope.postMessage(message, transfer);
};

const fail = (reason: DeafnessReason, error: unknown): void => {
  tell({ kind: 'failed', reason, detail: errorText(error) });
};

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
    throw new ModelProblem('modelCorrupt', errorText(error));
  }
};

let hearing: Hearing | undefined;

/** No stretch of sound takes this long; the recogniser inside has died without a word. */
const stuckMs = 15_000;
setInterval(() => {
  if (hearing !== undefined && hearing.busyMs > stuckMs)
    fail('workerDead', new Error('the recogniser does not answer'));
}, 2_000);

const begin = async ({
  model,
  sampleRateHz: rateHz,
}: Extract<ToWorker, { kind: 'load' }>): Promise<void> => {
  try {
    const engine = await loadModel(model, rateHz);
    const { kind, level, unheard } = unknownBay;
    const sounds = new SoundLink(rateHz, (watched) => {
      tell({ kind: 'noise', noise: watched ? { kind, level, unheard } : 'unwatched' });
    });
    hearing = new Hearing({
      engine,
      rateHz,
      tell,
      now: () => performance.timeOrigin + performance.now(),
      sounds,
    });
    tell({ kind: 'loaded' });
    // Only now, so that the recogniser is not kept waiting.
    void sounds.load(new URL('.', location.href).pathname.slice(0, -1));
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
