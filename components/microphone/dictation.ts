import type { Word } from '@/lib/voice';
import type { Engine, Recogniser, Reply } from './engine';
import { decibel, join, powerOf } from './sound';
import { SpeechLevel } from './speech-level';
import { wavFile } from './wav';

/** When a dictated note is over. */
export interface DictationRules {
  /** A pause for thought is longer than one between words. */
  readonly pauseMs: number;
  /** Nobody has begun to speak. */
  readonly patienceS: number;
  readonly limitS: number;
}

export const usualDictationRules: DictationRules = { pauseMs: 1500, patienceS: 8, limitS: 30 };

/** The words, as far as the model knows them, and the sound itself as 16-bit mono WAV. */
export interface Dictated {
  readonly words: readonly Word[];
  readonly clip: ArrayBuffer;
}

const framesPerPiece = 5;

/** Takes one note in the model's whole vocabulary and keeps its sound. Calls must not overlap. */
export class Dictation {
  readonly #recogniser: Recogniser;
  readonly #rateHz: number;
  readonly #rules: DictationRules;
  readonly #level = new SpeechLevel();
  readonly #kept: Float32Array[] = [];
  readonly #words: Word[] = [];
  #piece: Float32Array[] = [];
  #samples = 0;
  #begun = false;

  constructor(engine: Engine, rateHz: number, rules: DictationRules = usualDictationRules) {
    this.#recogniser = engine.recogniser();
    this.#rateHz = rateHz;
    this.#rules = rules;
  }

  /** True when the note is over. */
  async hear(frame: Float32Array): Promise<boolean> {
    this.#level.accept(decibel(powerOf(frame)));
    this.#begun ||= this.#level.speaking;
    this.#kept.push(frame);
    this.#piece.push(frame);
    this.#samples += frame.length;
    if (this.#piece.length >= framesPerPiece) await this.#feed();
    return this.#over();
  }

  async end(): Promise<Dictated> {
    await this.#feed();
    this.#take(await this.#recogniser.finish());
    this.#recogniser.remove();
    return { words: this.#words, clip: wavFile(join(this.#kept), this.#rateHz) };
  }

  #over(): boolean {
    const atS = this.#samples / this.#rateHz;
    if (atS >= this.#rules.limitS) return true;
    return this.#begun ? this.#level.quietMs >= this.#rules.pauseMs : atS >= this.#rules.patienceS;
  }

  async #feed(): Promise<void> {
    if (this.#piece.length === 0) return;
    const sound = join(this.#piece);
    this.#piece = [];
    this.#take(await this.#recogniser.accept(sound));
  }

  #take(reply: Reply): void {
    if (reply.kind === 'result') this.#words.push(...reply.words);
  }
}
