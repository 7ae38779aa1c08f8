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
  readonly phrases: number;
  readonly phrasesRight: number;
  readonly asksBack: number;
  /** Phrases that were refused because a tool was too loud. */
  readonly tooLoud: number;
  readonly valuesWrongAccepted: number;
}

const actsIn = ({ result }: Hearing): number =>
  result.outcomes.filter(
    ({ understanding }) => understanding.kind === 'intent' && understanding.certainty === 'sure',
  ).length;

const rateOf = (hearings: readonly Hearing[]): Rate => ({
  events: hearings.reduce((sum, one) => sum + actsIn(one), 0),
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
  return {
    group,
    noiseActs: rateOf(hearings.filter(({ noiseAlone }) => noiseAlone === true)),
    talkActs: rateOf(spoken.filter(({ verdict }) => verdict.kind === 'talk').map(({ one }) => one)),
    phrases: phrases.length,
    phrasesRight: phrases.filter(({ verdict }) => verdict.phraseRight).length,
    asksBack: phrases.filter(({ verdict }) => verdict.askedBack).length,
    tooLoud: phrases.filter(({ one }) => wasTooLoud(one)).length,
    valuesWrongAccepted: spoken.filter(({ verdict }) => verdict.value?.wrongAccepted === true)
      .length,
  };
};

/** Over everything, and where noises have kinds, by kind and level of the noise. */
export const hearRates = (hearings: readonly Hearing[]): readonly HearRates[] => {
  const kinds = [...new Set(hearings.flatMap(({ noiseKind }) => noiseKind ?? []))].sort();
  return [
    ratesOf('all', hearings),
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
    ? `0 in ${hours.toFixed(2)} h (below ${(3 / hours).toFixed(1)} an hour, 95 %)`
    : `${(events / hours).toFixed(1)} an hour (${events} in ${hours.toFixed(2)} h)`;

const perHundred = (part: number, of: number): string => ((100 * part) / of).toFixed(1);

export const ratesText = (rates: HearRates): string =>
  [
    `${rates.group}:`,
    ...(rates.noiseActs.hours > 0
      ? [`  false acts on noise alone       ${rateText(rates.noiseActs)}`]
      : []),
    ...(rates.talkActs.hours > 0
      ? [`  false acts on talk              ${rateText(rates.talkActs)}`]
      : []),
    ...(rates.phrases > 0
      ? [
          `  of 100 phrases                  ${perHundred(rates.phrasesRight, rates.phrases)} right, ` +
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
