import { causesText, hearCauses, type HearCauses } from './hearing-causes';
import { hearRates, ratesText, type HearRates } from './hearing-rates';
import { judge, tally, type Hearing, type Spread, type Tally } from './hearing-score';

export interface HearFacts {
  readonly browser: string;
  readonly modelLoadMs: number;
  /** Resident memory of the largest page process when all was done; it holds one recogniser. */
  readonly recogniserMemoryMb: number | undefined;
  readonly pages: number;
  readonly tookS: number;
}

interface Row extends Tally {
  /** Sub-folder, or `all`. */
  readonly group: string;
  /** `as recorded`, or the ratio mixed in. */
  readonly noise: string;
}

export interface HearReport extends HearFacts {
  readonly latency: string;
  readonly rows: readonly Row[];
  /** By the hour and by the phrase; also by kind of noise. */
  readonly rates: readonly HearRates[];
  /** What became of the phrases, and why. */
  readonly causes: HearCauses;
  readonly recordings: readonly object[];
}

/** Said in every report, because a latency means nothing without it. */
const latencyMeaning =
  'Latency, for phrases heard right: sound time from the end of speech to the frame of sound that settled it, plus wall time ' +
  'from the arrival of that frame until the page had it. "Understanding": it can be on the screen. "Act": it may act; a ' +
  'number without a unit waits for more digits before that. End of speech: end of the last 20 ms frame of the recording, ' +
  'before noise is mixed in, that is within 25 dB of its loudest frames (95th percentile) and 9 dB over its quietest tenth; ' +
  'recordings where these two differ by less than 15 dB are left out. The delay of a sound card and its driver is not in it.';

const noiseName = ({ snrDb }: Hearing): string =>
  snrDb === undefined ? 'as recorded' : `${snrDb} dB`;

const detail = (hearing: Hearing): object => {
  const { recording, result, meaning } = hearing;
  return {
    ...recording,
    noise: noiseName(hearing),
    ...(hearing.noiseKind === undefined ? {} : { noiseKind: hearing.noiseKind }),
    ...(hearing.noiseAlone === undefined ? {} : { noiseAlone: true }),
    meaning: meaning.kind === 'intent' ? meaning.intent : null,
    ...(result.problem === undefined ? {} : { problem: result.problem }),
    verdict: judge(hearing),
    endOfSpeechS: result.endOfSpeechS ?? null,
    outcomes: result.outcomes,
  };
};

export const hearReport = (all: readonly Hearing[], facts: HearFacts): HearReport => {
  const hearings = all.filter(({ noiseAlone }) => noiseAlone !== true);
  const noises = [...new Set(hearings.map(noiseName))];
  const groups = [...new Set(hearings.map(({ recording }) => recording.group))];
  const row = (group: string, noise: string): Row => ({
    group,
    noise,
    ...tally(
      hearings
        .filter((one) => noiseName(one) === noise)
        .filter(({ recording }) => group === 'all' || recording.group === group)
        .map(judge),
    ),
  });
  return {
    ...facts,
    latency: latencyMeaning,
    rows: ['all', ...(groups.length > 1 ? groups : [])].flatMap((group) =>
      noises.map((noise) => row(group, noise)),
    ),
    rates: hearRates(all),
    causes: hearCauses(all),
    recordings: all.map(detail),
  };
};

const share = (part: number, of: number): string =>
  of === 0 ? '–' : `${part}/${of} (${((100 * part) / of).toFixed(1)} %)`;

const spread = ({ n, p50, p95 }: Spread): string =>
  p50 === undefined || p95 === undefined
    ? '–'
    : `p50 ${p50.toFixed(0)} ms, p95 ${p95.toFixed(0)} ms (n = ${n})`;

const rowText = (row: Row): string => {
  return [
    `${row.group}, ${row.noise}: ${row.recordings} recordings` +
      (row.unreadable > 0 ? `, ${row.unreadable} of them missing or broken` : ''),
    `  phrases right                   ${share(row.phrasesRight, row.phrases)}`,
    `    at once                       ${share(row.phrasesAtOnce, row.phrases)}`,
    `    read back right, after a yes  ${share(row.phrasesAfterOneYes, row.phrases)}`,
    `    not heard                     ${share(row.phrasesNotHeard, row.phrases)}`,
    `    asks back                     ${share(row.phrasesAskedBack, row.phrases)}`,
    `    other act without asking      ${share(row.phrasesActedWrongly, row.phrases)}`,
    `  values right                    ${share(row.valuesRight, row.values)}`,
    `    wrong, accepted unasked       ${share(row.valuesWrongAccepted, row.values)}`,
    `  talk that is no phrase: acts    ${share(row.talkActedOn, row.talk)}`,
    `    asks back                     ${share(row.talkAskedBack, row.talk)}`,
    `  end of speech to understanding  ${spread(row.shownMs)}`,
    `  end of speech to act            ${spread(row.actedMs)}`,
  ].join('\n');
};

/** The report for reading. */
export const hearTable = (report: HearReport): string =>
  [
    ...report.rows.map(rowText),
    '',
    ...report.rates.map(ratesText),
    '',
    ...(report.causes.rows.length === 0 ? [] : [causesText(report.causes), '']),
    `Model loaded in ${report.modelLoadMs.toFixed(0)} ms; the recogniser's page holds ` +
      (report.recogniserMemoryMb === undefined
        ? 'an unknown amount of memory (this system does not tell)'
        : `${report.recogniserMemoryMb.toFixed(0)} MB resident`) +
      ` after everything; Chromium ${report.browser}; ${report.pages} recognisers at once; ${report.tookS.toFixed(0)} s in all.`,
    report.latency,
  ].join('\n');
