import { silenceDb } from './sound';

/** How the level is read; all in dB, or in frames of 20 ms. */
export interface LevelRules {
  /** Above the background by this much is speech. */
  readonly onsetDb: number;
  /** Below the background plus this much, or below the utterance's peak minus `belowPeakDb`, is a pause. */
  readonly releaseDb: number;
  readonly belowPeakDb: number;
  /** So many loud frames make an utterance begin; fewer are a knock. */
  readonly onsetFrames: number;
  /** The background may rise by this much a second while nobody speaks, and while somebody does. */
  readonly riseDbPerS: number;
  readonly riseInSpeechDbPerS: number;
}

export const usualLevelRules: LevelRules = {
  onsetDb: 9,
  releaseDb: 6,
  belowPeakDb: 30,
  onsetFrames: 5,
  riseDbPerS: 6,
  riseInSpeechDbPerS: 1,
};

const framesPerS = 50;
/** The first frames set the background at once. */
const settleFrames = 10;

/**
 * Follows the background and tells, frame by frame, whether somebody speaks and how long it has been quiet.
 * The background is the lowest level of late: it drops quickly, and rises slowly.
 */
export class SpeechLevel {
  readonly #rules: LevelRules;
  #frames = 0;
  #backgroundDb = 0;
  #smoothDb = silenceDb;
  #peakDb = silenceDb;
  #loudFrames = 0;
  #speaking = false;
  #quietFrames = 0;
  #framesSinceSound = 0;

  constructor(rules: LevelRules = usualLevelRules) {
    this.#rules = rules;
  }

  get backgroundDb(): number {
    return this.#backgroundDb;
  }

  get speaking(): boolean {
    return this.#speaking;
  }

  /** How long it has been quiet since the last loud frame of the utterance, ms; 0 when nobody has spoken. */
  get quietMs(): number {
    return this.#speaking ? (this.#quietFrames * 1000) / framesPerS : 0;
  }

  /** How long nothing has stood out from the background at all, ms; not even a word too faint to begin an utterance. */
  get stillMs(): number {
    return (this.#framesSinceSound * 1000) / framesPerS;
  }

  accept(levelDb: number): void {
    if (levelDb <= silenceDb) {
      this.#acceptNothing();
      return;
    }
    this.#frames += 1;
    this.#smoothDb =
      this.#frames === 1 ? levelDb : this.#smoothDb + 0.4 * (levelDb - this.#smoothDb);
    this.#followBackground();
    const overDb = this.#smoothDb - this.#backgroundDb;
    this.#framesSinceSound = overDb < this.#rules.releaseDb ? this.#framesSinceSound + 1 : 0;
    if (overDb > this.#rules.onsetDb) this.#loudFrames += 1;
    else if (!this.#speaking) this.#loudFrames = 0;
    if (!this.#speaking && this.#loudFrames >= this.#rules.onsetFrames) this.#begin();
    if (!this.#speaking) return;
    this.#peakDb = Math.max(this.#peakDb, this.#smoothDb);
    const quiet =
      overDb < this.#rules.releaseDb || this.#smoothDb < this.#peakDb - this.#rules.belowPeakDb;
    this.#quietFrames = quiet ? this.#quietFrames + 1 : 0;
  }

  /** The utterance is over; the next loud frames begin another. */
  end(): void {
    this.#speaking = false;
    this.#loudFrames = 0;
    this.#quietFrames = 0;
    this.#peakDb = silenceDb;
  }

  /**
   * No sound at all is no room: a microphone gives it while it starts, or between words where its driver gates it.
   * Taken for the background, it would make every room after it seem to speak.
   */
  #acceptNothing(): void {
    this.#framesSinceSound += 1;
    if (this.#speaking) this.#quietFrames += 1;
    else this.#loudFrames = 0;
  }

  #begin(): void {
    this.#speaking = true;
    this.#quietFrames = 0;
  }

  #followBackground(): void {
    if (this.#frames <= settleFrames) {
      this.#backgroundDb =
        this.#frames === 1 ? this.#smoothDb : Math.min(this.#backgroundDb, this.#smoothDb);
      return;
    }
    const difference = this.#smoothDb - this.#backgroundDb;
    const riseDb =
      (this.#speaking ? this.#rules.riseInSpeechDbPerS : this.#rules.riseDbPerS) / framesPerS;
    this.#backgroundDb += difference < 0 ? 0.2 * difference : Math.min(riseDb, difference);
  }
}
