import { decibel } from './sound';

interface Span {
  readonly startS: number;
  readonly endS: number;
}

const keptS = 30;
/** The quietest tenth of the second and a half before and of the speech itself is taken for the background. */
const beforeS = 1.5;
const backgroundShare = 0.1;

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** The levels of late, to say afterwards by how much an utterance stood out. */
export class LevelHistory {
  readonly #rateHz: number;
  #frames: { readonly atS: number; readonly power: number }[] = [];

  constructor(rateHz: number) {
    this.#rateHz = rateHz;
  }

  add(sample: number, levelDb: number): void {
    const atS = sample / this.#rateHz;
    this.#frames.push({ atS, power: 10 ** (levelDb / 10) });
    // Trimmed now and then, not at every frame.
    if (this.#frames.length > keptS * 100)
      this.#frames = this.#frames.filter((frame) => frame.atS > atS - keptS);
  }

  /** Mean power of the spoken words over that of the background, dB; undefined without words or sound around them. */
  speechOverBackgroundDb(words: readonly Span[]): number | undefined {
    const first = words[0];
    const last = words.at(-1);
    if (first === undefined || last === undefined) return undefined;
    const speech = this.#frames.filter((frame) =>
      words.some((word) => frame.atS >= word.startS && frame.atS < word.endS),
    );
    const around = this.#frames
      .filter((frame) => frame.atS >= first.startS - beforeS)
      .map((frame) => frame.power)
      .sort((a, b) => a - b);
    const background = around.slice(0, Math.max(1, Math.floor(around.length * backgroundShare)));
    if (speech.length === 0 || around.length === 0) return undefined;
    return decibel(mean(speech.map((frame) => frame.power))) - decibel(mean(background));
  }
}
