import type { Engine, Recogniser, Reply } from './engine';
import { usualHearingRules, type HearingRules } from './hearing-rules';
import { LevelHistory } from './level-history';
import type { Ending, Grammar, Pass, Utterance } from './protocol';
import { decibel, join, powerOf } from './sound';
import { SpeechLevel } from './speech-level';

interface Ears {
  readonly grammars: readonly Grammar[];
  readonly generation: number;
  readonly recognisers: readonly Recogniser[];
  /** Sample at which they began to listen, less what they were not given. */
  offset: number;
}

const isResult = (reply: Reply | undefined): reply is Extract<Reply, { kind: 'result' }> =>
  reply?.kind === 'result';

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
  #hasWords = false;
  #samples = 0;
  #startedAt = 0;

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

  /** By the sound, or, in noise, because the recogniser has words. */
  get speaking(): boolean {
    return this.#level.speaking || this.#hasWords;
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
    const replies = await this.#feed();
    this.#hasWords = replies.some((reply) => reply.kind === 'partial' && reply.text !== '');
    if (ending !== undefined) await this.#finish(ending, began);
    else if (isResult(replies[0])) await this.#finish('recogniser', began, replies);
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
    await Promise.all((this.#ears?.recognisers ?? []).map((one) => one.finish()));
    this.#hasWords = false;
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

  async #feed(): Promise<readonly Reply[]> {
    if (this.#piece.length === 0 || this.#ears === undefined) return [];
    const sound = join(this.#piece);
    this.#piece = [];
    return Promise.all(this.#ears.recognisers.map((one) => one.accept(sound)));
  }

  /** Collects every recogniser's words; those that have not ended by themselves are made to. */
  async #finish(ending: Ending, began: number, already: readonly Reply[] = []): Promise<void> {
    const ears = this.#ears;
    if (ears === undefined) return;
    const replies = await Promise.all(
      ears.recognisers.map((one, i) => {
        const reply = already[i];
        return isResult(reply) ? Promise.resolve(reply) : one.finish();
      }),
    );
    const passes = replies.map((reply) => this.#pass(reply, ears.offset));
    const words = passes.flatMap((pass) => pass.words);
    if (words.length > 0) this.#report(ears, passes, ending, began);
    this.#hasWords = false;
    this.#level.end();
    this.#change();
  }

  #pass(reply: Reply, offset: number): Pass {
    if (reply.kind === 'partial') return { words: [] };
    const shiftS = offset / this.#rateHz;
    return {
      words: reply.words.map((word) => ({
        ...word,
        startS: word.startS + shiftS,
        endS: word.endS + shiftS,
      })),
    };
  }

  #report(ears: Ears, passes: readonly Pass[], ending: Ending, began: number): void {
    const words = passes.find((pass) => pass.words.length > 0)?.words ?? [];
    const startS = words[0]?.startS ?? this.atS;
    const over = this.#history.speechOverBackgroundDb(words);
    this.#emit({
      generation: ears.generation,
      passes,
      ending,
      startS,
      endS: this.atS,
      ...(over === undefined ? {} : { speechOverNoiseDb: over }),
      decidedAtMs: began,
    });
  }

  #change(): void {
    if (this.#next === undefined) return;
    const { generation, grammars } = this.#next;
    this.#next = undefined;
    for (const one of this.#ears?.recognisers ?? []) one.remove();
    this.#ears = {
      grammars,
      generation,
      recognisers: grammars.map((phrases) => this.#engine.recogniser(phrases ?? undefined)),
      offset: this.#samples,
    };
  }
}
