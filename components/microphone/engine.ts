import { Model, type KaldiRecognizer } from 'vosk-browser';
import type { Word } from '@/lib/voice';

/** What the recogniser says after a stretch of sound: what it has so far, or, at the end of an utterance, its words. */
export type Reply =
  | { readonly kind: 'partial'; readonly text: string }
  | { readonly kind: 'result'; readonly words: readonly Word[] };

/** One recogniser with one grammar. Answers come in the order of the calls. */
export interface Recogniser {
  accept(samples: Float32Array): Promise<Reply>;
  /** Ends the utterance now and gives its words. */
  finish(): Promise<Reply>;
  remove(): void;
}

export interface Engine {
  /** `phrases` absent: the model's own vocabulary. Word times count from the first sample accepted. */
  recogniser(phrases?: readonly string[]): Recogniser;
}

interface Waiting {
  readonly resolve: (reply: Reply) => void;
  readonly reject: (error: Error) => void;
}

interface VoskMessage {
  readonly event: string;
  readonly error?: string;
  readonly result?: unknown;
}

interface VoskWord {
  readonly conf: number;
  readonly start: number;
  readonly end: number;
  readonly word: string;
}

/** vosk-browser types only results that hold words; an utterance without any has no `result` list. */
const replyOf = (message: VoskMessage): Reply => {
  const body = message.result as { partial?: string; result?: readonly VoskWord[] } | undefined;
  if (message.event === 'partialresult') return { kind: 'partial', text: body?.partial ?? '' };
  return {
    kind: 'result',
    words: (body?.result ?? []).map(({ word, conf, start, end }) => ({
      text: word,
      confidence: conf,
      startS: start,
      endS: end,
    })),
  };
};

class VoskRecogniser implements Recogniser {
  readonly #inner: KaldiRecognizer;
  readonly #rateHz: number;
  readonly #waiting: Waiting[] = [];

  constructor(model: Model, rateHz: number, phrases?: readonly string[]) {
    this.#rateHz = rateHz;
    this.#inner = new model.KaldiRecognizer(
      rateHz,
      phrases === undefined ? undefined : JSON.stringify(phrases),
    );
    this.#inner.setWords(true);
    const answer = (message: VoskMessage): void => this.#waiting.shift()?.resolve(replyOf(message));
    this.#inner.on('result', answer);
    this.#inner.on('partialresult', answer);
    this.#inner.on('error', (message: VoskMessage) => {
      this.#waiting.shift()?.reject(new Error(message.error ?? 'the recogniser failed'));
    });
  }

  accept(samples: Float32Array): Promise<Reply> {
    const reply = this.#next();
    this.#inner.acceptWaveformFloat(samples, this.#rateHz);
    return reply;
  }

  finish(): Promise<Reply> {
    const reply = this.#next();
    this.#inner.retrieveFinalResult();
    return reply;
  }

  remove(): void {
    this.#inner.remove();
  }

  // Every chunk and every call for the final result is answered by exactly one message, in order.
  #next(): Promise<Reply> {
    return new Promise((resolve, reject) => {
      this.#waiting.push({ resolve, reject });
    });
  }
}

/** Rejects when the package reports an error, or when it does neither within the time. */
const settled = (model: Model, limitMs: number): Promise<void> =>
  new Promise((resolve, reject) => {
    const timer = setTimeout(() => {
      reject(new Error('the model did not load in time'));
    }, limitMs);
    model.on('load', (message) => {
      clearTimeout(timer);
      if ('result' in message && message.result) resolve();
      else reject(new Error('the model did not load'));
    });
    model.on('error', (message) => {
      clearTimeout(timer);
      reject(
        new Error('error' in message && message.error ? message.error : 'the model did not load'),
      );
    });
  });

/**
 * Loads the model archive at the address into a recogniser worker of its own.
 * The address must change with the content: the package keeps what it unpacked under the address, without a version.
 */
export const loadEngine = async (url: string, rateHz: number, limitMs: number): Promise<Engine> => {
  const model = new Model(url, -1);
  await settled(model, limitMs);
  return { recogniser: (phrases) => new VoskRecogniser(model, rateHz, phrases) };
};
