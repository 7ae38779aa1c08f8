import { Dictation, usualDictationRules } from './dictation';
import type { Engine } from './engine';
import { beginOwnSpeech, hearOwnVoice, unknownOwnVoice } from '@/lib/speaking';
import { JobLine } from './job-line';
import { Listener } from './listener';
import type { FromWorker, ToWorker, Utterance } from './protocol';
import { decibel, frameSamples, powerOf } from './sound';
import { BayEar } from './sounds/bay-ear';
import type { SoundTeller } from './sounds/sound-link';
import { errorText } from '@/lib/result';

const framesPerLevel = 5;
/** The room goes on sounding for a moment after the kiosk has spoken. */
const echoS = 0.25;
/** So much of what was said before it was found to be somebody is heard after all: 0.5 s. */
const framesHeld = 25;
/** 5 s of sound. */
const mostFramesWaiting = 250;

export interface HearingParts {
  readonly engine: Engine;
  readonly rateHz: number;
  readonly tell: (message: FromWorker, transfer?: Transferable[]) => void;
  /** Wall clock, ms since 1970; only reported, never decided on. */
  readonly now: () => number;
  /** Absent: nobody watches the bay's sound. */
  readonly sounds?: SoundTeller;
}

/** Everything that happens once the model is there; one job at a time. */
export class Hearing {
  readonly #engine: Engine;
  readonly #rateHz: number;
  readonly #listener: Listener;
  readonly #tell: HearingParts['tell'];
  readonly #now: () => number;
  readonly #jobs: JobLine;
  readonly #bay: BayEar | undefined;
  #uttered: Utterance[] = [];
  #muted = false;
  /** Samples after the kiosk's own speech that are still its echo. */
  #echo = 0;
  #ownVoice = unknownOwnVoice;
  /** The last sound while the kiosk speaks, neither heard nor passed over yet. */
  #held: Float32Array[] = [];
  /** What began before this began in the kiosk's own speech, s. */
  #ownUntilS = Number.NEGATIVE_INFINITY;
  #behind = false;
  #recording = false;
  #dictation: Dictation | undefined;
  #levels: number[] = [];

  constructor({ engine, rateHz, tell, now, sounds }: HearingParts) {
    this.#engine = engine;
    this.#rateHz = rateHz;
    this.#tell = tell;
    this.#now = now;
    this.#listener = new Listener({
      engine,
      rateHz,
      emit: (utterance) => {
        this.#uttered.push(utterance);
      },
      now,
    });
    if (sounds !== undefined)
      this.#bay = new BayEar({
        teller: sounds,
        rateHz,
        onChange: ({ kind, level, unheard }) => {
          tell({ kind: 'noise', noise: { kind, level, unheard } });
        },
      });
    this.#jobs = new JobLine((error) => {
      const detail = errorText(error);
      tell({ kind: 'failed', reason: 'workerDead', detail });
    }, now);
  }

  /** How long the present job has been going on, ms. */
  get busyMs(): number {
    return this.#jobs.busyMs;
  }

  listenFor(message: Extract<ToWorker, { kind: 'grammars' }>): void {
    this.#jobs.add(async () => {
      this.#listener.listenFor(message.generation, message.grammars);
      await Promise.resolve();
    });
  }

  fromMicrophone(frame: Float32Array): void {
    // A machine that cannot keep up loses a phrase rather than answer ever later.
    if (this.#jobs.waiting > mostFramesWaiting) {
      if (!this.#behind) this.#jobs.add(() => this.#listener.drop());
      this.#behind = true;
      return;
    }
    this.#behind = false;
    this.#jobs.add(async () => {
      if (!this.#recording) await this.#hear(frame);
    });
  }

  fromRecording(samples: Float32Array): void {
    this.#jobs.add(async () => {
      if (!this.#recording) {
        await this.#listener.drop();
        this.#listener.newSource();
        this.#bay?.newSource();
        this.#recording = true;
      }
      for (let at = 0; at < samples.length; at += frameSamples)
        await this.#hear(samples.slice(at, at + frameSamples));
      this.#tell({ kind: 'fed', samples: samples.length });
    });
  }

  mute(muted: boolean): void {
    this.#jobs.add(async () => {
      if (muted && !this.#muted) {
        await this.#listener.drop();
        this.#ownVoice = beginOwnSpeech(this.#ownVoice);
      }
      if (this.#muted && !muted) this.#echo = echoS * this.#rateHz;
      this.#muted = muted;
    });
  }

  dictate(limitS: number): void {
    this.#jobs.add(async () => {
      await this.#listener.drop();
      this.#dictation ??= new Dictation(this.#engine, this.#rateHz, {
        ...usualDictationRules,
        limitS,
      });
    });
  }

  endDictation(): void {
    this.#jobs.add(() => this.#endDictation());
  }

  flush(id: number): void {
    this.#jobs.add(async () => {
      await this.#passHeld(0);
      if (this.#dictation === undefined) {
        await this.#listener.flush();
        await this.#report();
      } else await this.#endDictation();
      this.#recording = false;
      this.#listener.newSource();
      this.#bay?.newSource();
      this.#tell({ kind: 'flushed', id, atS: this.#listener.atS });
    });
  }

  async #hear(frame: Float32Array): Promise<void> {
    const arrivedMs = this.#now();
    if (this.#muted || this.#echo > 0) {
      this.#echo = Math.max(0, this.#echo - frame.length);
      await this.#besideOwnVoice(frame);
    } else if (this.#dictation === undefined) {
      await this.#hearPhrase(frame);
    } else {
      await this.#listener.skip(frame);
      await this.#bay?.hear(frame, this.#listener.atS, this.#recording);
      if (await this.#dictation.hear(frame)) await this.#endDictation();
    }
    this.#meter(frame, arrivedMs);
  }

  async #hearPhrase(frame: Float32Array): Promise<void> {
    await this.#listener.hear(frame);
    await this.#bay?.hear(frame, this.#listener.atS, this.#recording);
    await this.#report();
  }

  /** While the kiosk speaks nothing is heard, unless somebody speaks up near the microphone. */
  async #besideOwnVoice(frame: Float32Array): Promise<void> {
    this.#held.push(frame);
    if (!this.#muted) {
      await this.#passHeld(0);
      return;
    }
    await this.#passHeld(framesHeld);
    this.#ownVoice = hearOwnVoice(this.#ownVoice, decibel(powerOf(frame)));
    if (!this.#ownVoice.onset || this.#dictation !== undefined) return;
    this.#muted = false;
    this.#tell({ kind: 'bargeIn' });
    const held = this.#held.splice(0);
    const heldS = (held.length * frame.length) / this.#rateHz;
    this.#ownUntilS = this.#listener.atS + heldS + echoS;
    for (const one of held) await this.#hearPhrase(one);
  }

  async #passHeld(keep: number): Promise<void> {
    while (this.#held.length > keep) {
      const frame = this.#held.shift();
      if (frame !== undefined) await this.#listener.skip(frame);
      this.#bay?.gap();
    }
  }

  /** Gives out what was said, with what the bay's sound makes of it. */
  async #report(): Promise<void> {
    for (const utterance of this.#uttered.splice(0)) {
      const { startS, passes } = utterance;
      const endS = passes[0]?.words.at(-1)?.endS ?? utterance.endS;
      const trust = await this.#bay?.trust({ startS, endS }, this.#recording);
      this.#tell({
        kind: 'utterance',
        utterance: {
          ...utterance,
          ...(trust === undefined ? {} : { trust }),
          ...(startS < this.#ownUntilS ? { overOwnVoice: true } : {}),
        },
      });
    }
  }

  async #endDictation(): Promise<void> {
    if (this.#dictation === undefined) return;
    const { words, clip } = await this.#dictation.end();
    this.#dictation = undefined;
    this.#tell({ kind: 'dictated', words, clip }, [clip]);
  }

  #meter(frame: Float32Array, arrivedMs: number): void {
    this.#levels.push(powerOf(frame));
    if (this.#levels.length < framesPerLevel) return;
    const power = this.#levels.reduce((sum, one) => sum + one, 0) / this.#levels.length;
    this.#levels = [];
    this.#tell({
      kind: 'level',
      levelDb: decibel(power),
      backgroundDb: this.#listener.backgroundDb,
      speaking: this.#listener.speaking,
      stillS: this.#listener.stillS,
      atS: this.#listener.atS,
      arrivedMs,
    });
  }
}
