import {
  callRules,
  doubts,
  listeningPlan,
  understandCalled,
  type Heard,
  type Understanding,
  type VoiceContext,
} from '@/lib/voice';
import type { Grammar, Utterance } from './protocol';
import { Turn, type Moment, type Piece, type Quiet, type Spoken } from './turn';

/** What goes out: settled understandings, and what a number looks like while more of it may follow. */
export interface UnderstanderEvents {
  readonly onUnderstood: (spoken: Spoken) => void;
  readonly onPreview: (spoken: Spoken) => void;
}

interface Attention {
  readonly generation: number;
  readonly place: string;
  readonly context: VoiceContext;
}

const screenChanged = 'the screen changed while you spoke; say it again';

const heardFrom = (utterance: Utterance): readonly Heard[] =>
  utterance.passes.map(({ words }) => ({
    words,
    text: words.map((word) => word.text).join(' '),
    ...(utterance.speechOverNoiseDb === undefined
      ? {}
      : { speechOverNoiseDb: utterance.speechOverNoiseDb }),
    ...(utterance.speechOverLoudNoiseDb === undefined
      ? {}
      : { speechOverLoudNoiseDb: utterance.speechOverLoudNoiseDb }),
  }));

/** Turns utterances into understandings in the context they were spoken in. */
export class Understander {
  readonly #events: UnderstanderEvents;
  #attention: Attention | undefined;
  #turn: Turn | undefined;
  /** How far the sound is, and until when nothing needs the call word, s. */
  #atS = 0;
  #openUntilS = Number.NEGATIVE_INFINITY;

  constructor(events: UnderstanderEvents) {
    this.#events = events;
  }

  /** True when something else may be said now than before. */
  attend(context: VoiceContext, place: string): boolean {
    const before = this.#attention;
    if (before?.place === place && JSON.stringify(before.context) === JSON.stringify(context))
      return false;
    this.drop(screenChanged);
    this.#attention = { context, place, generation: (before?.generation ?? 0) + 1 };
    this.#turn = new Turn(([main, second]) =>
      understandCalled(main ?? { words: [], text: '' }, second, context, this.#openUntilS),
    );
    if (context.intents.includes('yes')) this.#open(callRules.afterQuestionS);
    return true;
  }

  /** What the recognisers are to listen for, under its number. */
  get plan(): { readonly generation: number; readonly grammars: readonly Grammar[] } | undefined {
    if (this.#attention === undefined) return undefined;
    const { main, second } = listeningPlan(this.#attention.context);
    return {
      generation: this.#attention.generation,
      grammars: second === undefined ? [main] : [main, second],
    };
  }

  /** `ownText`: what the kiosk was saying when it began. */
  hear(utterance: Utterance, ownText?: string): void {
    const { generation, endS: atS, decidedAtMs: arrivedMs } = utterance;
    this.#follow(atS);
    const piece: Piece = {
      readings: heardFrom(utterance),
      ended: { atS, arrivedMs },
      underTool: utterance.trust === 'tooLoud',
      ...(ownText === undefined ? {} : { ownText }),
    };
    // Begun before the screen changed: it must not act on what is there now.
    if (this.#turn === undefined || generation !== this.#attention?.generation) {
      this.#lose(piece, screenChanged);
      return;
    }
    // Words out of a tool alone. What waits for more may have gone on under it.
    if (utterance.trust === 'toolOnly') {
      const waiting = this.#turn.drop();
      this.#turn.lost(piece);
      if (waiting !== undefined) this.#lose(piece, doubts.tool);
      return;
    }
    this.#report(this.#turn.hear(piece));
    const { preview } = this.#turn;
    if (preview?.understanding.kind === 'intent') this.#events.onPreview(preview);
  }

  tick(now: Moment, quiet: Quiet): void {
    this.#follow(now.atS);
    this.#report(this.#turn?.tick(now, quiet) ?? []);
  }

  /** Nothing more will come. */
  settle(now: Moment): void {
    this.#report(this.#turn?.settle(now) ?? []);
  }

  /** What waits for more will not get it, and is not to be taken for the whole. */
  drop(why: string): void {
    const waiting = this.#turn?.drop();
    if (waiting !== undefined) this.#lose(waiting, why);
  }

  #lose({ readings, ended }: Piece, why: string): void {
    const heard = readings[0] ?? { words: [], text: '' };
    const understanding: Understanding = { kind: 'nothing', why, said: heard.text };
    this.#events.onUnderstood({ understanding, heard, ended, decided: ended });
  }

  #report(spoken: readonly Spoken[]): void {
    for (const one of spoken) {
      if (one.understanding.kind === 'intent') this.#open(callRules.afterActS);
      this.#events.onUnderstood(one);
    }
  }

  #follow(atS: number): void {
    // A recogniser that was started again counts from the beginning.
    if (atS < this.#atS - 1) this.#openUntilS = Number.NEGATIVE_INFINITY;
    this.#atS = atS;
  }

  #open(forS: number): void {
    this.#openUntilS = Math.max(this.#openUntilS, this.#atS + forS);
  }
}
