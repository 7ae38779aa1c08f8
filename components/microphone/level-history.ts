import { decibel } from './sound';

interface Span {
  readonly startS: number;
  readonly endS: number;
}

const keptS = 30;
/** The quietest tenth of the second and a half before and of the speech itself is taken for the background. */
const beforeS = 1.5;
const backgroundShare = 0.1;
/** What nine tenths of the time just before do not reach is the loud part: tools come and go, and the background does not tell of them. */
const loudShare = 0.9;
/** Words begin a little before they are found to, and end after. */
const beforeWordS = 0.05;
const afterWordS = 0.08;
const gapBeforeS = 0.2;
/** Of less than so many frames nothing is said. */
const fewestFrames = 10;

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

  /**
   * The softest word's loudest moment over the loud part of what was there before the first, dB. `sinceS`: where speech
   * before these words had ended. Undefined without words, or when too little was heard in between.
   */
  speechOverLoudDb(words: readonly Span[], sinceS: number): number | undefined {
    const firstS = words[0]?.startS;
    if (firstS === undefined) return undefined;
    const before = this.#powers(Math.max(sinceS, firstS - beforeS), firstS - gapBeforeS).sort(
      (a, b) => a - b,
    );
    const loud = before[Math.floor(loudShare * (before.length - 1))];
    if (loud === undefined || before.length < fewestFrames) return undefined;
    const peaks = words.map(({ startS, endS }) =>
      this.#powers(startS - beforeWordS, endS + afterWordS).reduce((a, b) => Math.max(a, b), 0),
    );
    return decibel(Math.min(...peaks)) - decibel(loud);
  }

  #powers(fromS: number, toS: number): number[] {
    return this.#frames.flatMap(({ atS, power }) => (atS >= fromS && atS < toS ? [power] : []));
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
