import type { Heard, Understanding, VoiceContext, Word } from '@/lib/voice';
import { deafnessText, type DeafnessReason } from './failure';
import { Microphone } from './microphone';
import type { BayNoise, Utterance } from './protocol';
import { RecogniserLife } from './recogniser-life';
import type { RecogniserLink } from './recogniser-link';
import { feedRecording, fetchRecording, playAloud } from './recording';
import { sampleRateHz, silenceDb } from './sound';
import type { Spoken } from './turn';
import { Understander } from './understander';

export type EarState =
  | { readonly kind: 'off' }
  | { readonly kind: 'loading'; readonly loaded: number; readonly total: number }
  | {
      readonly kind: 'listening';
      readonly levelDb: number;
      /** What the bay sounds like; not yet known while the classifier loads. */
      readonly noise?: BayNoise;
    }
  | { readonly kind: 'failed'; readonly reason: DeafnessReason; readonly text: string };

/** A note taken in the model's whole vocabulary; `clip` is its sound (WAV), which counts more than the words. */
export interface Note {
  readonly text: string;
  readonly words: readonly Word[];
  readonly clip: Blob;
}

export interface EarParts {
  /** Where worker, worklet and model are served. */
  readonly base?: string;
  /** Something was said and is over: act on it. */
  readonly onUnderstood: (understanding: Understanding, heard: Heard, spoken: Spoken) => void;
  /** A number was said, but more of it may follow: show it, do not act on it. */
  readonly onPreview?: (understanding: Understanding, heard: Heard, spoken: Spoken) => void;
  /** Somebody speaks while the kiosk does, and is listened to: it should be quiet at once. */
  readonly onBargeIn?: () => void;
  /** For measuring: every utterance as the recogniser ended it. */
  readonly onUtterance?: (utterance: Utterance) => void;
}

/** Long enough for the last number of a recording to be settled. */
const afterRecordingS = 1.5;

/** The kiosk's hearing: microphone, recogniser and understanding, with one state to show. */
export class Ears {
  readonly #understander: Understander;
  readonly #life: RecogniserLife;
  readonly #microphone: Microphone;
  readonly #listeners = new Set<() => void>();
  #state: EarState = { kind: 'off' };
  #wantsMicrophone = false;
  #muted = false;
  /** What the kiosk said last. */
  #ownText = '';
  #noise: BayNoise | undefined;
  #note: ((note: Note | undefined) => void) | undefined;

  constructor({ base = '/hearing', onUnderstood, onPreview, onBargeIn, onUtterance }: EarParts) {
    this.#understander = new Understander({
      onUnderstood: (spoken) => {
        onUnderstood(spoken.understanding, spoken.heard, spoken);
      },
      onPreview: (spoken) => {
        onPreview?.(spoken.understanding, spoken.heard, spoken);
      },
    });
    this.#microphone = new Microphone(`${base}/worklet.js`, {
      opened: () => {
        this.#show(this.#listening(silenceDb));
      },
      failed: (reason) => {
        this.#show(failed(reason));
      },
    });
    this.#life = new RecogniserLife(base, {
      loading: (loaded, total) => {
        this.#show({ kind: 'loading', loaded, total });
      },
      ready: (link) => {
        this.#ready(link);
      },
      failed: (reason) => {
        this.#forget();
        this.#show(failed(reason));
      },
      level: ({ levelDb, atS, arrivedMs, speaking, stillS }) => {
        this.#understander.tick({ atS, arrivedMs }, { speaking, stillS });
        this.#meter(levelDb);
      },
      utterance: (utterance) => {
        onUtterance?.(utterance);
        this.#understander.hear(
          utterance,
          utterance.overOwnVoice === true ? this.#ownText : undefined,
        );
      },
      noise: (noise) => {
        this.#noise = noise;
        if (this.#state.kind === 'listening') this.#show(this.#listening(this.#state.levelDb));
      },
      bargeIn: () => {
        onBargeIn?.();
      },
      dictated: (words, clip) => {
        this.#note?.({ text: words.map((word) => word.text).join(' '), words, clip });
        this.#note = undefined;
      },
    });
  }

  get state(): EarState {
    return this.#state;
  }

  /** For a subscriber such as `useSyncExternalStore`. */
  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => {
      this.#listeners.delete(listener);
    };
  };

  /** Loads the model and opens the microphone; also the way back from a failure. */
  start(): void {
    this.#wantsMicrophone = true;
    const { link } = this.#life;
    if (link === undefined) this.#life.begin();
    else if (this.#state.kind !== 'listening') this.#openMicrophone(link);
  }

  /** Lets go of microphone and recogniser; what is still under way is ignored. */
  stop(): void {
    this.#wantsMicrophone = false;
    this.#life.end();
    this.#forget();
    this.#show({ kind: 'off' });
  }

  /**
   * Says what may be said now. `place` names what it will act on (step, question): an utterance begun in one place
   * is never understood in another.
   */
  attend(context: VoiceContext, place: string): void {
    if (this.#understander.attend(context, place)) this.#tellGrammars();
  }

  /** While the kiosk itself speaks; `text`: what it says. */
  setMuted(muted: boolean, text = ''): void {
    this.#muted = muted;
    if (muted) this.#ownText = text;
    if (muted) this.#understander.drop('the kiosk was speaking; say it again');
    this.#life.link?.mute(muted);
  }

  /** Takes one note; ends at a long pause, at the limit, or by `endNote`. Undefined when it could not be taken. */
  takeNote(limitS = 30): Promise<Note | undefined> {
    this.#note?.(undefined);
    const { link } = this.#life;
    if (link === undefined) return Promise.resolve(undefined);
    link.dictate(limitS);
    return new Promise((resolve) => {
      this.#note = resolve;
    });
  }

  endNote(): void {
    this.#life.link?.endDictation();
  }

  /** Listens to a recording instead of the microphone, at the pace it was spoken. Needs no microphone. */
  async playRecording(url: string, { audible = true } = {}): Promise<void> {
    const samples = new Float32Array(await fetchRecording(url));
    const withPause = new Float32Array(samples.length + afterRecordingS * sampleRateHz);
    withPause.set(samples);
    const aloud = audible ? playAloud(samples) : Promise.resolve();
    await Promise.all([aloud, this.listenTo(withPause, { paced: true })]);
  }

  /** Listens to samples as to the microphone; settles when all utterances in them have been reported. */
  async listenTo(
    samples: Float32Array,
    { paced = false, carryOn }: { paced?: boolean; carryOn?: () => boolean } = {},
  ): Promise<void> {
    const link = await this.#life.becomeReady();
    if (link === undefined) return;
    await feedRecording(samples, (piece) => link.feed(piece), paced, carryOn);
    const atS = await link.flush();
    if (atS !== undefined)
      this.#understander.settle({ atS, arrivedMs: performance.timeOrigin + performance.now() });
    const { trouble } = this.#microphone;
    if (trouble !== undefined) this.#show(failed(trouble));
  }

  #ready(link: RecogniserLink): void {
    this.#tellGrammars();
    if (this.#muted) link.mute(true);
    if (this.#wantsMicrophone) this.#openMicrophone(link);
    else this.#show(this.#listening(silenceDb));
  }

  #openMicrophone(link: RecogniserLink): void {
    void this.#microphone.open((port) => {
      link.microphone(port);
    });
  }

  #tellGrammars(): void {
    const { plan } = this.#understander;
    if (plan !== undefined) this.#life.link?.listenFor(plan.generation, plan.grammars);
  }

  /** The meter moves in steps of 2 dB, so that the screen is not drawn for less. */
  #meter(levelDb: number): void {
    const rounded = Math.round(levelDb / 2) * 2;
    if (this.#state.kind !== 'listening' || this.#state.levelDb !== rounded)
      this.#show(this.#listening(rounded));
  }

  #listening(levelDb: number): EarState {
    return {
      kind: 'listening',
      levelDb,
      ...(this.#noise === undefined ? {} : { noise: this.#noise }),
    };
  }

  #forget(): void {
    this.#understander.drop('the recogniser stopped; say it again');
    this.#microphone.close();
    this.#noise = undefined;
    this.#note?.(undefined);
    this.#note = undefined;
  }

  #show(state: EarState): void {
    this.#state = state;
    for (const listener of this.#listeners) listener();
  }
}

const failed = (reason: DeafnessReason): EarState => ({
  kind: 'failed',
  reason,
  text: deafnessText[reason],
});
