import { doubts, overOwnVoice, type Heard, type Understanding, type Word } from '@/lib/voice';

/** What one stretch of speech between two pauses gave: one reading for each recogniser. */
export interface Piece {
  readonly readings: readonly Heard[];
  readonly ended: Moment;
  /** A tool ran over it: it may be heard wrongly, and must not act. */
  readonly underTool?: boolean;
  /** The kiosk itself was speaking when it began, and said this. */
  readonly ownText?: string;
}

/** A place in the sound (s), and when its sound had arrived: wall clock, ms since 1970, for measuring only. */
export interface Moment {
  readonly atS: number;
  readonly arrivedMs: number;
}

/** What became of one or more pieces. */
export interface Spoken {
  readonly understanding: Understanding;
  readonly heard: Heard;
  /** When the pause after the last piece was found, and when the decision fell. */
  readonly ended: Moment;
  readonly decided: Moment;
}

export interface TurnRules {
  /** After so much stillness nothing belongs any more to a number, or to words that are no phrase. */
  readonly stillS: number;
  /** Nor after so long a time without words, when the shop is never still. */
  readonly patienceS: number;
  /** A number that begins so soon after something unclear may be the rest of it. Of wrong ones, all began within 1.4 s. */
  readonly clearOfS: number;
}

export const usualTurnRules: TurnRules = { stillS: 1, patienceS: 2.5, clearOfS: 2 };

/** What the sound is like now. */
export interface Quiet {
  readonly speaking: boolean;
  readonly stillS: number;
}

const emptyHeard: Heard = { words: [], text: '' };

const least = (levels: readonly (number | undefined)[]): number | undefined => {
  const known = levels.filter((level) => level !== undefined);
  return known.length === 0 ? undefined : Math.min(...known);
};

const joinHeard = (a: Heard, b: Heard): Heard => {
  const words: readonly Word[] = [...a.words, ...b.words];
  const over = least([a.speechOverNoiseDb, b.speechOverNoiseDb]);
  const overLoud = least([a.speechOverLoudNoiseDb, b.speechOverLoudNoiseDb]);
  return {
    words,
    text: words.map((word) => word.text).join(' '),
    ...(over === undefined ? {} : { speechOverNoiseDb: over }),
    ...(overLoud === undefined ? {} : { speechOverLoudNoiseDb: overLoud }),
  };
};

const ownTextOf = (texts: readonly (string | undefined)[]): { readonly ownText?: string } => {
  const said = texts.filter((text) => text !== undefined);
  return said.length === 0 ? {} : { ownText: said.join(' ') };
};

const joinPieces = (a: Piece, b: Piece): Piece => ({
  readings: b.readings.map((reading, i) => joinHeard(a.readings[i] ?? emptyHeard, reading)),
  ended: b.ended,
  underTool: a.underTool === true || b.underTool === true,
  ...ownTextOf([a.ownText, b.ownText]),
});

/** "One hundred" may be followed by "and twenty", and "bolt three" by "torqued ten"; "next" stands alone. */
const mayGoOn = (understanding: Understanding): boolean => {
  if (understanding.kind === 'nothing') return true;
  const { intent } = understanding;
  return (intent.kind === 'value' || intent.kind === 'ambiguousValue') && intent.unit === undefined;
};

const afterUnclear = (understanding: Understanding, soon: boolean): Understanding =>
  soon &&
  understanding.kind === 'intent' &&
  understanding.intent.kind === 'value' &&
  understanding.certainty === 'sure'
    ? { ...understanding, certainty: 'unsure', why: doubts.aroundIt }
    : understanding;

/** A number under a tool is read back; all else has to be said again. */
const underTool = (understanding: Understanding): Understanding => {
  if (understanding.kind === 'nothing') return { ...understanding, why: doubts.tool };
  const { intent, said } = understanding;
  return intent.kind === 'value' || intent.kind === 'ambiguousValue'
    ? { ...understanding, certainty: 'unsure', why: doubts.tool }
    : { kind: 'nothing', why: doubts.tool, said };
};

/**
 * Joins pieces of speech that belong together although there was a pause between them, so that no part of a number is
 * taken for the whole. Time is that of the sound.
 */
export class Turn {
  readonly #understand: (readings: readonly Heard[]) => Understanding;
  readonly #rules: TurnRules;
  #waiting: Piece | undefined;
  /** Where the last thing ended that was not clear, s. */
  #unclearUntilS = Number.NEGATIVE_INFINITY;

  constructor(
    understand: (readings: readonly Heard[]) => Understanding,
    rules: TurnRules = usualTurnRules,
  ) {
    this.#understand = understand;
    this.#rules = rules;
  }

  /** What waits for more, as it would be understood now. */
  get preview(): Spoken | undefined {
    return this.#waiting === undefined
      ? undefined
      : this.#spoken(this.#waiting, this.#waiting.ended);
  }

  /** One more piece; gives what is settled by it. */
  hear(piece: Piece): readonly Spoken[] {
    const whole = this.#waiting === undefined ? piece : joinPieces(this.#waiting, piece);
    const joined = this.#understand(whole.readings);
    const alone = whole === piece ? joined : this.#understand(piece.readings);
    // "One twenty", then "next": two phrases, which make none together.
    const apart = joined.kind === 'nothing' && !mayGoOn(alone);
    if (apart) return [...this.settle(piece.ended), this.#settled(piece, piece.ended)];
    this.#waiting = whole;
    return mayGoOn(joined) ? [] : this.settle(piece.ended);
  }

  /** Time has passed; while somebody speaks, what waits goes on waiting. */
  tick(now: Moment, { speaking, stillS }: Quiet): readonly Spoken[] {
    if (this.#waiting === undefined || speaking) return [];
    const waitedS = now.atS - this.#waiting.ended.atS;
    const still = stillS >= this.#rules.stillS;
    return still || waitedS >= this.#rules.patienceS ? this.settle(now) : [];
  }

  /** Nothing more will come. */
  settle(now: Moment): readonly Spoken[] {
    const waiting = this.#waiting;
    this.#waiting = undefined;
    return waiting === undefined ? [] : [this.#settled(waiting, now)];
  }

  /** Forgets what waits, and gives it for the record. What comes right after it may be the rest of it. */
  drop(): Piece | undefined {
    const waiting = this.#waiting;
    this.#waiting = undefined;
    if (waiting !== undefined) this.lost(waiting);
    return waiting;
  }

  /** Something was said that is not understood here: what comes right after it may be the rest of it. */
  lost(piece: Piece): void {
    this.#unclearUntilS = piece.readings[0]?.words.at(-1)?.endS ?? this.#unclearUntilS;
  }

  #settled(piece: Piece, decided: Moment): Spoken {
    const spoken = this.#spoken(piece, decided);
    const { understanding } = spoken;
    if (understanding.kind === 'nothing' || understanding.certainty === 'unsure') this.lost(piece);
    return spoken;
  }

  #spoken(piece: Piece, decided: Moment): Spoken {
    const heard = piece.readings[0] ?? emptyHeard;
    const beginsS = heard.words[0]?.startS ?? piece.ended.atS;
    const meant = this.#understand(piece.readings);
    const understanding = piece.ownText === undefined ? meant : overOwnVoice(meant, piece.ownText);
    return {
      understanding: afterUnclear(
        piece.underTool === true ? underTool(understanding) : understanding,
        beginsS - this.#unclearUntilS < this.#rules.clearOfS,
      ),
      heard,
      ended: piece.ended,
      decided,
    };
  }
}
