import type { Heard, Understanding, VoiceContext, Word } from '@/lib/voice';
import { deafnessText, type DeafnessReason } from './failure';
import { modelFacts } from './model-facts';
import type { Utterance } from './protocol';
import { RecogniserLink } from './recogniser-link';
import { feedRecording, fetchRecording, playAloud } from './recording';
import { sampleRateHz } from './sound';
import { openMicrophone, type SoundSource } from './sound-source';
import type { Spoken } from './turn';
import { Understander } from './understander';

export type EarState =
  | { readonly kind: 'off' }
  | { readonly kind: 'loading'; readonly loaded: number; readonly total: number }
  | { readonly kind: 'listening'; readonly levelDb: number }
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
  /** For measuring: every utterance as the recogniser ended it. */
  readonly onUtterance?: (utterance: Utterance) => void;
}

const restartAfterMs = [500, 2_000, 10_000, 60_000] as const;
/** Long enough for the last number of a recording to be settled. */
const afterRecordingS = 1.2;

/** Living this long, a worker has earned a quick restart again. */
const steadyMs = 60_000;

/** The kiosk's hearing: microphone, recogniser and understanding, with one state to show. */
export class Ears {
  readonly #base: string;
  readonly #understander: Understander;
  readonly #onUtterance: EarParts['onUtterance'];
  readonly #listeners = new Set<() => void>();
  #state: EarState = { kind: 'off' };
  #link: RecogniserLink | undefined;
  #ready = false;
  #source: SoundSource | undefined;
  #wantsMicrophone = false;
  /** The microphone's own trouble; recordings can still be listened to. */
  #deafness: DeafnessReason | undefined;
  #muted = false;
  #note: ((note: Note | undefined) => void) | undefined;
  #restarts = 0;
  #loadedAtMs = 0;
  #restartTimer: ReturnType<typeof setTimeout> | undefined;
  #whenReady: (() => void)[] = [];

  constructor({ base = '/hearing', onUnderstood, onPreview, onUtterance }: EarParts) {
    this.#base = base;
    this.#onUtterance = onUtterance;
    this.#understander = new Understander({
      onUnderstood: (spoken) => {
        onUnderstood(spoken.understanding, spoken.heard, spoken);
      },
      onPreview: (spoken) => {
        onPreview?.(spoken.understanding, spoken.heard, spoken);
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
    this.#begin();
  }

  /** Lets go of microphone and recogniser; what is still under way is ignored. */
  stop(): void {
    this.#wantsMicrophone = false;
    this.#deafness = undefined;
    this.#letGo();
    this.#restarts = 0;
    this.#show({ kind: 'off' });
  }

  /**
   * Says what may be said now. `place` names what it will act on (step, question): an utterance begun in one place
   * is never understood in another.
   */
  attend(context: VoiceContext, place: string): void {
    if (this.#understander.attend(context, place)) this.#tellGrammars();
  }

  /** While the kiosk itself speaks. */
  setMuted(muted: boolean): void {
    this.#muted = muted;
    if (muted) this.#understander.drop('the kiosk was speaking; say it again');
    if (this.#ready) this.#link?.mute(muted);
  }

  /** Takes one note; ends at a long pause, at the limit, or by `endNote`. Undefined when it could not be taken. */
  takeNote(limitS = 30): Promise<Note | undefined> {
    this.#note?.(undefined);
    if (!this.#ready || this.#link === undefined) return Promise.resolve(undefined);
    this.#link.dictate(limitS);
    return new Promise((resolve) => {
      this.#note = resolve;
    });
  }

  endNote(): void {
    this.#link?.endDictation();
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
    await this.#becomeReady();
    const link = this.#link;
    if (link === undefined) return;
    await feedRecording(samples, (piece) => link.feed(piece), paced, carryOn);
    const atS = await link.flush();
    if (atS !== undefined)
      this.#understander.settle({ atS, arrivedMs: performance.timeOrigin + performance.now() });
    if (this.#deafness !== undefined) this.#show(failed(this.#deafness));
  }

  #becomeReady(): Promise<void> {
    if (this.#ready) return Promise.resolve();
    this.#begin();
    return new Promise((resolve) => {
      this.#whenReady.push(resolve);
    });
  }

  #begin(): void {
    clearTimeout(this.#restartTimer);
    if (this.#link === undefined) void this.#load();
    else if (this.#ready) void this.#openMicrophone();
  }

  async #load(): Promise<void> {
    this.#show({ kind: 'loading', loaded: 0, total: 1 });
    const link = this.#newLink();
    this.#link = link;
    const facts = await modelFacts(this.#base);
    if (this.#link !== link) return;
    if (facts.ok) link.load(facts.value, sampleRateHz);
    else this.#fail(facts.error);
  }

  #newLink(): RecogniserLink {
    return new RecogniserLink(`${this.#base}/worker.js`, {
      loading: (loaded, total) => {
        this.#show({ kind: 'loading', loaded, total });
      },
      loaded: () => {
        this.#loaded();
      },
      failed: (reason) => {
        this.#fail(reason);
      },
      level: ({ levelDb, atS, arrivedMs, speaking, stillS }) => {
        this.#understander.tick({ atS, arrivedMs }, { speaking, stillS });
        const rounded = Math.round(levelDb / 2) * 2;
        if (this.#state.kind !== 'listening' || this.#state.levelDb !== rounded)
          this.#show({ kind: 'listening', levelDb: rounded });
      },
      utterance: (utterance) => {
        this.#onUtterance?.(utterance);
        this.#understander.hear(utterance);
      },
      dictated: (words, clip) => {
        this.#note?.({ text: words.map((word) => word.text).join(' '), words, clip });
        this.#note = undefined;
      },
    });
  }

  #loaded(): void {
    this.#ready = true;
    this.#loadedAtMs = performance.now();
    this.#tellGrammars();
    if (this.#muted) this.#link?.mute(true);
    for (const resolve of this.#whenReady) resolve();
    this.#whenReady = [];
    if (this.#wantsMicrophone) void this.#openMicrophone();
    else this.#show({ kind: 'listening', levelDb: -100 });
  }

  async #openMicrophone(): Promise<void> {
    const link = this.#link;
    if (link === undefined || this.#source !== undefined) return;
    const { port1, port2 } = new MessageChannel();
    const opened = await openMicrophone(`${this.#base}/worklet.js`, port1, () => {
      this.#lostMicrophone();
    });
    this.#deafness = opened.ok ? undefined : opened.error;
    if (!opened.ok) {
      this.#show(failed(opened.error));
      return;
    }
    if (this.#link !== link) {
      opened.value.stop();
      return;
    }
    this.#source = opened.value;
    link.microphone(port2);
    this.#show({ kind: 'listening', levelDb: -100 });
  }

  #lostMicrophone(): void {
    this.#source?.stop();
    this.#source = undefined;
    this.#deafness = 'noMicrophone';
    this.#show(failed('noMicrophone'));
  }

  #tellGrammars(): void {
    const { plan } = this.#understander;
    if (this.#ready && plan !== undefined) this.#link?.listenFor(plan.generation, plan.grammars);
  }

  #fail(reason: DeafnessReason): void {
    this.#letGo();
    this.#show(failed(reason));
    if (reason !== 'workerDead') return;
    if (performance.now() - this.#loadedAtMs > steadyMs) this.#restarts = 0;
    const waitMs = restartAfterMs[Math.min(this.#restarts, restartAfterMs.length - 1)];
    this.#restarts += 1;
    this.#restartTimer = setTimeout(() => {
      this.#begin();
    }, waitMs);
  }

  #letGo(): void {
    this.#understander.drop('the recogniser stopped; say it again');
    clearTimeout(this.#restartTimer);
    this.#link?.end();
    this.#link = undefined;
    this.#ready = false;
    this.#source?.stop();
    this.#source = undefined;
    this.#note?.(undefined);
    this.#note = undefined;
    for (const resolve of this.#whenReady) resolve();
    this.#whenReady = [];
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
