import type { Word } from '@/lib/voice';
import type { Recogniser, Reply } from './engine';

/** One recogniser and the words it has ended so far; it may end some by itself before the utterance is over. */
export class Hearer {
  readonly #recogniser: Recogniser;
  #words: Word[] = [];
  #partial = '';

  constructor(recogniser: Recogniser) {
    this.#recogniser = recogniser;
  }

  /** Whether it has words that have not been given out. */
  get hasWords(): boolean {
    return this.#partial !== '' || this.#words.length > 0;
  }

  /** True when it ended an utterance by itself at this sound. */
  async accept(sound: Float32Array): Promise<boolean> {
    const reply = await this.#recogniser.accept(sound);
    this.#keep(reply);
    return reply.kind === 'result';
  }

  /** Ends what is being said. */
  async finish(): Promise<void> {
    this.#keep(await this.#recogniser.finish());
  }

  /** Gives out all words. */
  take(): readonly Word[] {
    const words = this.#words;
    this.#words = [];
    return words;
  }

  remove(): void {
    this.#recogniser.remove();
  }

  #keep(reply: Reply): void {
    if (reply.kind === 'result') this.#words.push(...reply.words);
    this.#partial = reply.kind === 'partial' ? reply.text : '';
  }
}
