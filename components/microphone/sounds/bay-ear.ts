import {
  hearBay,
  heldDb,
  trustIn,
  unknownBay,
  type BaySound,
  type LoudSpan,
  type Trust,
} from '@/lib/sound';
import { decibel, frameSamples, join, powerOf } from '../sound';
import type { SoundTeller } from './sound-link';

const windowFrames = 50;
const framesBetween = 25;
/** A phrase waits no longer for the classifier; a recording, which must always give the same, does. */
const phraseLimitMs = 120;
const recordingLimitMs = 10_000;

interface BayEarParts {
  readonly teller: SoundTeller;
  readonly rateHz: number;
  readonly onChange: (bay: BaySound) => void;
}

/** Keeps the last second of sound, has it told twice a second, and follows what the bay sounds like. */
export class BayEar {
  readonly #parts: BayEarParts;
  #frames: Float32Array[] = [];
  #sinceTold = 0;
  #endS = 0;
  #bay = unknownBay;
  #telling: Promise<void> = Promise.resolve();
  #waiting = 0;
  /** Counts sources, so that a late answer about one is not taken for another. */
  #source = 0;

  constructor(parts: BayEarParts) {
    this.#parts = parts;
  }

  get bay(): BaySound {
    return this.#bay;
  }

  /** A frame that ends at this time of the sound; settles at once, but for a recording when it has been told. */
  async hear(frame: Float32Array, endS: number, recording: boolean): Promise<void> {
    if (!this.#parts.teller.ready) return;
    this.#frames.push(frame);
    if (this.#frames.length > windowFrames) this.#frames.shift();
    this.#endS = endS;
    this.#sinceTold += 1;
    if (this.#sinceTold < framesBetween || this.#frames.length < windowFrames) return;
    // A classifier that cannot keep up is asked less often.
    if (!recording && this.#waiting > 0) return;
    const told = this.#tell(recordingLimitMs);
    if (recording) await told;
  }

  /** Whether what was said can be trusted; looks at the sound up to now first. */
  async trust(said: LoudSpan, recording: boolean): Promise<Trust> {
    if (!this.#parts.teller.ready) return 'trusted';
    if (this.#frames.length === windowFrames)
      await this.#tell(recording ? recordingLimitMs : phraseLimitMs);
    return trustIn(this.#bay, said);
  }

  /** The sound comes from somewhere else now. */
  newSource(): void {
    this.#frames = [];
    this.#sinceTold = 0;
    this.#source += 1;
    this.#show(unknownBay);
  }

  /** A gap in the sound: what was before it does not join what comes after. */
  gap(): void {
    this.#frames = [];
    this.#sinceTold = 0;
  }

  #tell(limitMs: number): Promise<void> {
    const samples = join(this.#frames);
    const levelDb = heldDb(this.#frames.map((frame) => decibel(powerOf(frame))));
    const endS = this.#endS;
    const startS = endS - (windowFrames * frameSamples) / this.#parts.rateHz;
    const source = this.#source;
    this.#sinceTold = 0;
    this.#waiting += 1;
    const asked = this.#parts.teller.tell(samples, limitMs);
    const before = this.#telling;
    this.#telling = asked.then(async (scores) => {
      await before;
      this.#waiting -= 1;
      if (scores !== undefined && levelDb !== undefined && source === this.#source)
        this.#show(hearBay(this.#bay, { startS, endS, levelDb, scores }));
    });
    return this.#telling;
  }

  #show(bay: BaySound): void {
    const { kind, level, unheard } = this.#bay;
    this.#bay = bay;
    if (kind !== bay.kind || level !== bay.level || unheard !== bay.unheard)
      this.#parts.onChange(bay);
  }
}
