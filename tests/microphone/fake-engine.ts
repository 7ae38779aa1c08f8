import type { Engine, Recogniser, Reply } from '@/components/microphone/engine';

/** A recogniser that hears whatever the test says, and writes down what is done to it. */
export class FakeRecogniser implements Recogniser {
  readonly phrases: readonly string[] | undefined;
  accepted = 0;
  finished = 0;
  removed = false;
  /** What the next `finish` gives. */
  words: string[] = [];
  /** Ends the utterance by itself at the next piece. */
  endsItself = false;
  partial = '';

  constructor(phrases: readonly string[] | undefined) {
    this.phrases = phrases;
  }

  accept(samples: Float32Array): Promise<Reply> {
    this.accepted += samples.length;
    if (!this.endsItself) return Promise.resolve({ kind: 'partial', text: this.partial });
    this.endsItself = false;
    return Promise.resolve(this.#result());
  }

  finish(): Promise<Reply> {
    this.finished += 1;
    return Promise.resolve(this.#result());
  }

  remove(): void {
    this.removed = true;
  }

  #result(): Reply {
    const atS = this.accepted / 16_000;
    const words = this.words.map((text) => ({
      text,
      confidence: 1,
      startS: atS - 0.6,
      endS: atS - 0.35,
    }));
    this.words = [];
    this.partial = '';
    return { kind: 'result', words };
  }
}

export class FakeEngine implements Engine {
  readonly made: FakeRecogniser[] = [];

  recogniser(phrases?: readonly string[]): FakeRecogniser {
    const one = new FakeRecogniser(phrases);
    this.made.push(one);
    return one;
  }

  /** The recogniser made last. */
  get latest(): FakeRecogniser {
    const one = this.made.at(-1);
    if (one === undefined) throw new Error('no recogniser has been made');
    return one;
  }
}

/** So many milliseconds of a steady sound of the level, in frames of 20 ms. */
export const sound = (ms: number, db: number): Float32Array[] =>
  Array.from({ length: ms / 20 }, () => new Float32Array(320).fill(10 ** (db / 20)));
