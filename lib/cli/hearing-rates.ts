import { judge, type Hearing } from './hearing-score';

/** How often something happened in so much sound. */
export interface Rate {
  readonly events: number;
  readonly hours: number;
}

/** False alarms by the hour, and questions by the phrase. */
export interface HearRates {
  readonly group: string;
  /** Acts taken for sure where nothing was said: noise alone. */
  readonly noiseActs: Rate;
  /** Acts taken for sure where what was said is no phrase. */
  readonly talkActs: Rate;
  /** Questions that nobody gave cause for, in either. */
  readonly noiseQuestions: number;
  readonly talkQuestions: number;
  readonly phrases: number;
  /** Of these, taken without a question, and read back right so that one yes takes it. */
  readonly phrasesAtOnce: number;
  readonly phrasesAfterOneYes: number;
  readonly asksBack: number;
  /** Phrases that were refused because a tool was too loud. */
  readonly tooLoud: number;
  readonly valuesWrongAccepted: number;
}

const countIn = (hearings: readonly Hearing[], certainty: 'sure' | 'unsure'): number =>
  hearings
    .flatMap(({ result }) => result.outcomes)
    .filter(
      ({ understanding }) =>
        understanding.kind === 'intent' && understanding.certainty === certainty,
    ).length;

const rateOf = (hearings: readonly Hearing[]): Rate => ({
  events: countIn(hearings, 'sure'),
  hours: hearings.reduce((sum, { result }) => sum + result.durationS, 0) / 3600,
});

const wasTooLoud = ({ result }: Hearing): boolean =>
  result.outcomes.some(
    ({ understanding }) =>
      understanding.kind === 'nothing' && understanding.why.startsWith('too loud'),
  );

const ratesOf = (group: string, hearings: readonly Hearing[]): HearRates => {
  const judged = hearings.map((one) => ({ one, verdict: judge(one) }));
  const spoken = judged.filter(({ one }) => one.noiseAlone !== true);
  const phrases = spoken.filter(({ verdict }) => verdict.kind === 'phrase');
  const talk = spoken.filter(({ verdict }) => verdict.kind === 'talk').map(({ one }) => one);
  const noise = hearings.filter(({ noiseAlone }) => noiseAlone === true);
  return {
    group,
    noiseActs: rateOf(noise),
    talkActs: rateOf(talk),
    noiseQuestions: countIn(noise, 'unsure'),
    talkQuestions: countIn(talk, 'unsure'),
    phrases: phrases.length,
    phrasesAtOnce: phrases.filter(({ verdict }) => verdict.atOnce).length,
    phrasesAfterOneYes: phrases.filter(({ verdict }) => verdict.afterOneYes).length,
    asksBack: phrases.filter(({ verdict }) => verdict.askedBack).length,
    tooLoud: phrases.filter(({ one }) => wasTooLoud(one)).length,
    valuesWrongAccepted: spoken.filter(({ verdict }) => verdict.value?.wrongAccepted === true)
      .length,
  };
};

/** As it is first, then ever louder noise. */
const levelsIn = (hearings: readonly Hearing[]): readonly (number | undefined)[] => {
  const mixed = [...new Set(hearings.flatMap(({ snrDb }) => snrDb ?? []))].sort((a, b) => b - a);
  return hearings.some(({ snrDb }) => snrDb === undefined) ? [undefined, ...mixed] : mixed;
};

const atLevel = (name: string, level: number | undefined): string =>
  level === undefined ? name : `${name} at ${level} dB`;

/** By voice and level of the noise that was mixed in; recordings in noisy sub-folders stand apart. */
const voiceRates = (hearings: readonly Hearing[]): readonly HearRates[] => {
  const named = hearings.flatMap((one) => {
    const { voice, group } = one.recording;
    return voice === undefined ? [] : [{ one, name: `voice ${voice}, ${group}` }];
  });
  return [...new Set(named.map(({ name }) => name))].sort().flatMap((name) => {
    const mine = named.filter((other) => other.name === name).map(({ one }) => one);
    return levelsIn(mine).map((level) =>
      ratesOf(
        atLevel(name, level),
        mine.filter(({ snrDb }) => snrDb === level),
      ),
    );
  });
};

/** Over everything, by voice where voices are known, and where noises have kinds, by kind and level of the noise. */
export const hearRates = (hearings: readonly Hearing[]): readonly HearRates[] => {
  const kinds = [...new Set(hearings.flatMap(({ noiseKind }) => noiseKind ?? []))].sort();
  return [
    ratesOf('all', hearings),
    ...voiceRates(hearings),
    ...kinds.flatMap((kind) => {
      const mine = hearings.filter(({ noiseKind }) => noiseKind === kind);
      const levels = [...new Set(mine.flatMap(({ snrDb }) => snrDb ?? []))].sort((a, b) => b - a);
      return [
        ...levels.map((level) =>
          ratesOf(
            `${kind} at ${level} dB`,
            mine.filter(({ snrDb }) => snrDb === level),
          ),
        ),
        ...[mine.filter(({ noiseAlone }) => noiseAlone === true)]
          .filter(({ length }) => length > 0)
          .map((alone) => ratesOf(`${kind} alone`, alone)),
      ];
    }),
  ];
};

/** No event in T hours bounds the rate at 3/T with 95 % confidence (rule of three). */
const rateText = ({ events, hours }: Rate): string =>
  events === 0
    ? `0 in ${(60 * hours).toFixed(1)} min (below ${(3 / hours).toFixed(1)} an hour, 95 %)`
    : `${(events / hours).toFixed(1)} an hour (${events} in ${(60 * hours).toFixed(1)} min)`;

const perHundred = (part: number, of: number): string => ((100 * part) / of).toFixed(1);

export const ratesText = (rates: HearRates): string =>
  [
    `${rates.group}:`,
    ...(rates.noiseActs.hours > 0
      ? [
          `  false acts on noise alone       ${rateText(rates.noiseActs)}; questions: ${rates.noiseQuestions}`,
        ]
      : []),
    ...(rates.talkActs.hours > 0
      ? [
          `  false acts on talk              ${rateText(rates.talkActs)}; questions: ${rates.talkQuestions}`,
        ]
      : []),
    ...(rates.phrases > 0
      ? [
          `  of 100 phrases                  ${perHundred(rates.phrasesAtOnce, rates.phrases)} right at once, ` +
            `${perHundred(rates.phrasesAfterOneYes, rates.phrases)} after one yes; ` +
            `${perHundred(rates.asksBack, rates.phrases)} asked back, ` +
            `${perHundred(rates.tooLoud, rates.phrases)} too loud (n = ${rates.phrases}); ` +
            `values wrong, accepted unasked: ${rates.valuesWrongAccepted}`,
        ]
      : []),
  ].join('\n');

/** A noise's kind is the folder it lies in, or its name up to the first digit or dot: `grinder-2.wav` is `grinder`. */
export const noiseKindOf = (file: string): string => {
  const parts = file.split('/');
  const name = parts.length > 1 ? (parts[0] ?? '') : file;
  return name.replace(/[-_ ]*[\d.].*$/, '') || name;
};

/** One noise of each kind after another, so that a few recordings meet all kinds. */
export const kindsInTurn = (files: readonly string[]): readonly string[] => {
  const seen = new Map<string, number>();
  const placed = files.map((file) => {
    const kind = noiseKindOf(file);
    const round = seen.get(kind) ?? 0;
    seen.set(kind, round + 1);
    return { file, round };
  });
  return placed.sort((a, b) => a.round - b.round).map(({ file }) => file);
};
