import { unknownWord, type Word } from '@/lib/voice';
import type { Engine } from './engine';
import { Hearer } from './hearer';
import { usualHearingRules, type HearingRules } from './hearing-rules';
import { LevelHistory } from './level-history';
import type { Ending, Grammar, Pass, Utterance } from './protocol';
import { decibel, join, powerOf } from './sound';
import { SpeechLevel } from './speech-level';

interface Ears {
  readonly grammars: readonly Grammar[];
  readonly generation: number;
  /** The first decides when an utterance is over. */
  readonly hearers: readonly Hearer[];
  /** Sample at which they began to listen, less what they were not given. */
  offset: number;
}

/**
 * Takes frames of sound in order and gives utterances. All decisions are on the sound's own time (samples),
 * so a recording fed faster than real time gives the same utterances as the same sound from a microphone.
 * The calls must not overlap: one call's promise settles before the next call is made.
 */
export class Listener {
  readonly #engine: Engine;
  readonly #rateHz: number;
  readonly #rules: HearingRules;
  readonly #emit: (utterance: Utterance) => void;
  readonly #now: () => number;
  #level: SpeechLevel;
  #history: LevelHistory;
  #ears: Ears | undefined;
  #next: { readonly generation: number; readonly grammars: readonly Grammar[] } | undefined;
  #piece: Float32Array[] = [];
  #samples = 0;
  #startedAt = 0;
  /** Where the last utterance with words was over, s. */
  #lastEndS = Number.NEGATIVE_INFINITY;

  constructor(parts: {
    readonly engine: Engine;
    readonly rateHz: number;
    readonly emit: (utterance: Utterance) => void;
    /** Wall clock, ms since 1970; only reported, never decided on. */
    readonly now: () => number;
    readonly rules?: HearingRules;
  }) {
    this.#engine = parts.engine;
    this.#rateHz = parts.rateHz;
    this.#emit = parts.emit;
    this.#now = parts.now;
    this.#rules = parts.rules ?? usualHearingRules;
    this.#level = new SpeechLevel(this.#rules.level);
    this.#history = new LevelHistory(parts.rateHz);
  }

  /** How much sound has passed, s. */
  get atS(): number {
    return this.#samples / this.#rateHz;
  }

  get backgroundDb(): number {
    return this.#level.backgroundDb;
  }

  /** How long nothing has stood out from the background, s. */
  get stillS(): number {
    return this.#level.stillMs / 1000;
  }

  /** By the sound, or, in noise, because the recogniser has words. */
  get speaking(): boolean {
    return this.#level.speaking || (this.#ears?.hearers[0]?.hasWords ?? false);
  }

  /** Listens with these grammars from the next pause on; at once when nobody is speaking. */
  listenFor(generation: number, grammars: readonly Grammar[]): void {
    this.#next = { generation, grammars };
    if (!this.#level.speaking) this.#change();
  }

  /** One frame of sound. */
  async hear(frame: Float32Array): Promise<void> {
    const began = this.#now();
    const wasSpeaking = this.#level.speaking;
    const levelDb = decibel(powerOf(frame));
    this.#level.accept(levelDb);
    this.#history.add(this.#samples, levelDb);
    if (!wasSpeaking && this.#level.speaking) this.#startedAt = this.#samples;
    this.#samples += frame.length;
    this.#piece.push(frame);
    const ending = this.#ending();
    if (ending === undefined && this.#piece.length < this.#rules.framesPerPiece) return;
    const endedItself = await this.#feed();
    if (ending !== undefined) await this.#finish(ending, began);
    else if (endedItself) await this.#finish('recogniser', began);
  }

  /** Sound that is not to be heard: time passes, nothing else. What was being said is dropped. */
  async skip(frame: Float32Array): Promise<void> {
    this.#samples += frame.length;
    if (this.#ears !== undefined) this.#ears.offset += frame.length;
    await Promise.resolve();
  }

  /** The sound comes from somewhere else now: its background is learnt anew. */
  newSource(): void {
    this.#level = new SpeechLevel(this.#rules.level);
    this.#history = new LevelHistory(this.#rateHz);
  }

  /** Drops what is being said. */
  async drop(): Promise<void> {
    await this.#feed();
    await this.#end('flush');
    for (const hearer of this.#ears?.hearers ?? []) hearer.take();
    this.#level.end();
    this.#change();
  }

  /** Ends what is being said, as if a pause had come. */
  async flush(): Promise<void> {
    const began = this.#now();
    await this.#feed();
    await this.#finish('flush', began);
  }

  #ending(): Ending | undefined {
    if (this.#level.quietMs >= this.#rules.pauseMs) return 'pause';
    const speechS = (this.#samples - this.#startedAt) / this.#rateHz;
    return this.#level.speaking && speechS > this.#rules.longestS ? 'limit' : undefined;
  }

  /** True when the first recogniser ended an utterance by itself. */
  async #feed(): Promise<boolean> {
    if (this.#piece.length === 0 || this.#ears === undefined) return false;
    const sound = join(this.#piece);
    this.#piece = [];
    const ended = await Promise.all(this.#ears.hearers.map((one) => one.accept(sound)));
    return ended[0] ?? false;
  }

  /** The first one that has ended by itself is not made to: the sound after that belongs to what comes next. */
  async #end(ending: Ending): Promise<void> {
    const open = (this.#ears?.hearers ?? []).slice(ending === 'recogniser' ? 1 : 0);
    await Promise.all(open.map((one) => one.finish()));
  }

  async #finish(ending: Ending, began: number): Promise<void> {
    const ears = this.#ears;
    if (ears === undefined) return;
    await this.#end(ending);
    const passes = ears.hearers.map((hearer) => this.#pass(hearer.take(), ears.offset));
    const words = passes[0]?.words ?? [];
    if (words.length > 0) this.#report(ears, passes, words, ending, began);
    this.#level.end();
    this.#change();
  }

  #pass(words: readonly Word[], offset: number): Pass {
    const shiftS = offset / this.#rateHz;
    return {
      words: words.map((word) => ({
        ...word,
        startS: word.startS + shiftS,
        endS: word.endS + shiftS,
      })),
    };
  }

  #report(
    ears: Ears,
    passes: readonly Pass[],
    words: readonly Word[],
    ending: Ending,
    began: number,
  ): void {
    const startS = words[0]?.startS ?? this.atS;
    const over = this.#history.speechOverBackgroundDb(words);
    const known = words.filter(({ text }) => text !== unknownWord);
    const overLoud = this.#history.speechOverLoudDb(known, this.#lastEndS);
    this.#lastEndS = this.atS;
    this.#emit({
      generation: ears.generation,
      passes,
      ending,
      startS,
      endS: this.atS,
      ...(over === undefined ? {} : { speechOverNoiseDb: over }),
      ...(overLoud === undefined ? {} : { speechOverLoudNoiseDb: overLoud }),
      decidedAtMs: began,
    });
  }

  #change(): void {
    if (this.#next === undefined) return;
    const { generation, grammars } = this.#next;
    this.#next = undefined;
    for (const one of this.#ears?.hearers ?? []) one.remove();
    this.#ears = {
      grammars,
      generation,
      hearers: grammars.map((phrases) => new Hearer(this.#engine.recogniser(phrases ?? undefined))),
      offset: this.#samples,
    };
  }
}
