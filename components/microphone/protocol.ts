import type { BaySound, Trust } from '@/lib/sound';
import type { Word } from '@/lib/voice';
import type { DeafnessReason } from './failure';

/** What the server says about the speech model in use. */
export interface ModelFacts {
  readonly name: string;
  readonly url: string;
  readonly bytes: number;
  readonly sha256: string;
}

/** One grammar: the phrases that may be said. `null`: the model's whole vocabulary. */
export type Grammar = readonly string[] | null;

/** What one recogniser made of an utterance. */
export interface Pass {
  readonly words: readonly Word[];
}

/** How an utterance came to its end: a pause in the sound, the recogniser's own rule, or from outside. */
export type Ending = 'pause' | 'recogniser' | 'limit' | 'flush';

/** An utterance, and where it lies in the sound heard so far (seconds). */
export interface Utterance {
  /** Of the grammars it was heard with. */
  readonly generation: number;
  /** One for each grammar, in their order. */
  readonly passes: readonly Pass[];
  readonly ending: Ending;
  readonly startS: number;
  /** Where the decision fell that it is over. */
  readonly endS: number;
  readonly speechOverNoiseDb?: number;
  readonly speechOverLoudNoiseDb?: number;
  /** Whether a loud tool hid it; without a word of it, nobody watched. */
  readonly trust?: Trust;
  /** It was begun while the kiosk itself was speaking. */
  readonly overOwnVoice?: true;
  /** When the last frame needed for the decision had arrived: wall clock, ms since 1970. */
  readonly decidedAtMs: number;
}

/** What is shown of the bay's sound; no classifier could be loaded to watch it. */
export type BayNoise = Pick<BaySound, 'kind' | 'level' | 'unheard'> | 'unwatched';

export type ToWorker =
  | { readonly kind: 'load'; readonly model: ModelFacts; readonly sampleRateHz: number }
  | {
      readonly kind: 'grammars';
      readonly generation: number;
      readonly grammars: readonly Grammar[];
    }
  /** Frames from the microphone arrive at this port. */
  | { readonly kind: 'microphone'; readonly port: MessagePort }
  /** Frames of a recording; the microphone is not heard from the first one to the flush. */
  | { readonly kind: 'recording'; readonly samples: Float32Array }
  | { readonly kind: 'mute'; readonly muted: boolean }
  | { readonly kind: 'dictate'; readonly limitS: number }
  | { readonly kind: 'endDictation' }
  /** Ends what is being said as if a pause had come, and answers when all before is done. */
  | { readonly kind: 'flush'; readonly id: number }
  | { readonly kind: 'ping'; readonly id: number };

export type FromWorker =
  | { readonly kind: 'loading'; readonly loaded: number; readonly total: number }
  | { readonly kind: 'loaded' }
  | { readonly kind: 'failed'; readonly reason: DeafnessReason; readonly detail: string }
  | {
      readonly kind: 'level';
      readonly levelDb: number;
      readonly backgroundDb: number;
      readonly speaking: boolean;
      /** How long nothing has stood out from the background. */
      readonly stillS: number;
      readonly atS: number;
      /** When the last of that sound had arrived: wall clock, ms since 1970. */
      readonly arrivedMs: number;
    }
  | { readonly kind: 'utterance'; readonly utterance: Utterance }
  | { readonly kind: 'noise'; readonly noise: BayNoise }
  /** Somebody speaks near the microphone while the kiosk does; from here on it is listened to. */
  | { readonly kind: 'bargeIn' }
  | { readonly kind: 'dictated'; readonly words: readonly Word[]; readonly clip: ArrayBuffer }
  | { readonly kind: 'fed'; readonly samples: number }
  | { readonly kind: 'flushed'; readonly id: number; readonly atS: number }
  | { readonly kind: 'pong'; readonly id: number };
