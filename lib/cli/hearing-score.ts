import type { Outcome, TrialResult } from '../../components/microphone/measure/check';
import { sameIntent, type Intent, type Understanding } from '../voice';
import type { Recording } from './hearing-index';

/** One recording, once listened to, at one noise level (undefined: as it is). */
export interface Hearing {
  readonly recording: Recording;
  readonly snrDb?: number;
  /** Kind of the noise that was mixed in, or listened to alone. */
  readonly noiseKind?: string;
  /** There is no speech at all: a noise by itself. */
  readonly noiseAlone?: true;
  /** What the exact words mean with every phrase allowed. */
  readonly meaning: Understanding;
  readonly result: TrialResult;
}

/** What is said of a recording; each is counted once. */
export interface Verdict {
  readonly kind: 'phrase' | 'talk' | 'unreadable';
  /** The last intent is what the words mean, and nothing else was taken for sure; asked back or not. */
  readonly phraseRight: boolean;
  /** … and nothing was asked. */
  readonly atOnce: boolean;
  /** … or one thing was asked, which one yes answers: a value that was read back as it was said. */
  readonly afterOneYes: boolean;
  readonly notHeard: boolean;
  readonly askedBack: boolean;
  /** Some other intent was taken without asking back. */
  readonly actedWrongly: boolean;
  /** Only where a value is spoken. */
  readonly value?: { readonly right: boolean; readonly wrongAccepted: boolean };
  readonly latency?: Latency;
}

/** From the end of speech, ms. */
export interface Latency {
  /** To the understanding on the screen. */
  readonly shownMs: number;
  /** To the moment it may act: a number without a unit waits in case it goes on. */
  readonly actedMs: number;
}

type Found = Extract<Understanding, { kind: 'intent' }>;

const near = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(b));

/** A unit counts as right when it is the one spoken, or not heard at all. */
const isSpokenValue = (intent: Intent, { value, unit }: Recording): boolean =>
  intent.kind === 'value' &&
  value !== undefined &&
  near(intent.value, value) &&
  (intent.unit === undefined || unit === undefined || intent.unit === unit);

const isValue = (intent: Intent): boolean =>
  intent.kind === 'value' || intent.kind === 'ambiguousValue';

const latencyOf = (outcome: Outcome, endOfSpeechS: number): Latency => {
  const shownMs = (outcome.shownS - endOfSpeechS) * 1000 + outcome.shownComputeMs;
  const actedMs = (outcome.actedS - endOfSpeechS) * 1000 + outcome.actedComputeMs;
  // Fed faster than real time, the sound waits for the computing; from a microphone it does not.
  return { shownMs, actedMs: Math.max(shownMs, actedMs) };
};

export const judge = ({ recording, meaning, result }: Hearing): Verdict => {
  const found = result.outcomes.flatMap(({ understanding }): Found[] =>
    understanding.kind === 'intent' ? [understanding] : [],
  );
  const last = found.at(-1);
  const expected = meaning.kind === 'intent' ? meaning.intent : undefined;
  const isRight = ({ intent }: Found): boolean =>
    (expected !== undefined && sameIntent(intent, expected)) || isSpokenValue(intent, recording);
  const sure = found.filter((one) => one.certainty === 'sure');
  const actedWrongly = sure.some((one) => !isRight(one));
  const phraseRight = last !== undefined && isRight(last) && !actedWrongly;
  const questions = found.length - sure.length;
  const decided = result.outcomes.findLast(({ understanding }) => understanding.kind === 'intent');
  const { endOfSpeechS } = result;
  return {
    kind: result.problem !== undefined ? 'unreadable' : expected === undefined ? 'talk' : 'phrase',
    phraseRight,
    atOnce: phraseRight && questions === 0,
    afterOneYes:
      phraseRight && questions === 1 && last.certainty === 'unsure' && last.intent.kind === 'value',
    notHeard: last === undefined,
    askedBack: questions > 0,
    actedWrongly,
    ...(recording.value === undefined
      ? {}
      : {
          value: {
            right: last !== undefined && isSpokenValue(last.intent, recording) && !actedWrongly,
            wrongAccepted: sure.some(
              ({ intent }) => isValue(intent) && !isSpokenValue(intent, recording),
            ),
          },
        }),
    ...(decided === undefined || endOfSpeechS === undefined
      ? {}
      : { latency: latencyOf(decided, endOfSpeechS) }),
  };
};

export interface Tally {
  readonly recordings: number;
  readonly unreadable: number;
  readonly phrases: number;
  readonly phrasesRight: number;
  readonly phrasesAtOnce: number;
  readonly phrasesAfterOneYes: number;
  readonly phrasesNotHeard: number;
  readonly phrasesAskedBack: number;
  readonly phrasesActedWrongly: number;
  readonly values: number;
  readonly valuesRight: number;
  readonly valuesWrongAccepted: number;
  readonly talk: number;
  readonly talkActedOn: number;
  readonly talkAskedBack: number;
  readonly shownMs: Spread;
  readonly actedMs: Spread;
}

export interface Spread {
  readonly n: number;
  readonly p50?: number;
  readonly p95?: number;
}

/** Nearest-rank quantile. */
export const quantile = (values: readonly number[], share: number): number | undefined =>
  [...values].sort((a, b) => a - b)[Math.max(0, Math.ceil(share * values.length) - 1)];

const spread = (values: readonly number[]): Spread => {
  const p50 = quantile(values, 0.5);
  const p95 = quantile(values, 0.95);
  return {
    n: values.length,
    ...(p50 === undefined ? {} : { p50 }),
    ...(p95 === undefined ? {} : { p95 }),
  };
};

export const tally = (verdicts: readonly Verdict[]): Tally => {
  const phrases = verdicts.filter(({ kind }) => kind === 'phrase');
  const talk = verdicts.filter(({ kind }) => kind === 'talk');
  const values = verdicts.flatMap(({ kind, value }) =>
    kind === 'unreadable' || value === undefined ? [] : [value],
  );
  const late = phrases.flatMap(({ latency, phraseRight }) =>
    phraseRight && latency !== undefined ? [latency] : [],
  );
  return {
    recordings: verdicts.length,
    unreadable: verdicts.filter(({ kind }) => kind === 'unreadable').length,
    phrases: phrases.length,
    phrasesRight: phrases.filter((one) => one.phraseRight).length,
    phrasesAtOnce: phrases.filter((one) => one.atOnce).length,
    phrasesAfterOneYes: phrases.filter((one) => one.afterOneYes).length,
    phrasesNotHeard: phrases.filter((one) => one.notHeard).length,
    phrasesAskedBack: phrases.filter((one) => one.askedBack).length,
    phrasesActedWrongly: phrases.filter((one) => one.actedWrongly).length,
    values: values.length,
    valuesRight: values.filter((one) => one.right).length,
    valuesWrongAccepted: values.filter((one) => one.wrongAccepted).length,
    talk: talk.length,
    talkActedOn: talk.filter((one) => one.actedWrongly).length,
    talkAskedBack: talk.filter((one) => one.askedBack).length,
    shownMs: spread(late.map(({ shownMs }) => shownMs)),
    actedMs: spread(late.map(({ actedMs }) => actedMs)),
  };
};
