import { judge, tally, type Hearing, type Tally } from './hearing-score';

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
  readonly recordings: readonly object[];
}

/** Said in every report, because a latency means nothing without it. */
const latencyMeaning =
  'From the end of speech to the understanding, for phrases heard right. End of speech: end of the last 20 ms frame of the ' +
  'recording without mixed-in noise that is within 25 dB of its loudest frames (95th percentile) and 9 dB over its quietest tenth; recordings ' +
  'where these differ by less than 15 dB are left out. Latency: sound time from there to the frame at which the ' +
  'utterance was declared over, plus wall time from the arrival of that frame to the understanding in the page. ' +
  'The delay of a sound card and its driver is not in it.';

const noiseName = ({ snrDb }: Hearing): string =>
  snrDb === undefined ? 'as recorded' : `${snrDb} dB`;

const detail = (hearing: Hearing): object => {
  const { recording, result, meaning } = hearing;
  return {
    ...recording,
    noise: noiseName(hearing),
    meaning: meaning.kind === 'intent' ? meaning.intent : null,
    ...(result.problem === undefined ? {} : { problem: result.problem }),
    verdict: judge(hearing),
    endOfSpeechS: result.endOfSpeechS ?? null,
    outcomes: result.outcomes,
  };
};

export const hearReport = (hearings: readonly Hearing[], facts: HearFacts): HearReport => {
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
    recordings: hearings.map(detail),
  };
};

const share = (part: number, of: number): string =>
  of === 0 ? '–' : `${part}/${of} (${((100 * part) / of).toFixed(1)} %)`;

const rowText = (row: Row): string => {
  const { p50, p95, n } = row.latencyMs;
  const ms = (value: number | undefined): string =>
    value === undefined ? '–' : `${value.toFixed(0)} ms`;
  return [
    `${row.group}, ${row.noise}: ${row.recordings} recordings` +
      (row.unreadable > 0 ? `, ${row.unreadable} of them missing or broken` : ''),
    `  phrases right                   ${share(row.phrasesRight, row.phrases)}`,
    `    not heard                     ${share(row.phrasesNotHeard, row.phrases)}`,
    `    asks back                     ${share(row.phrasesAskedBack, row.phrases)}`,
    `    other act without asking      ${share(row.phrasesActedWrongly, row.phrases)}`,
    `  values right                    ${share(row.valuesRight, row.values)}`,
    `    wrong, accepted unasked       ${share(row.valuesWrongAccepted, row.values)}`,
    `  talk that is no phrase: acts    ${share(row.talkActedOn, row.talk)}`,
    `    asks back                     ${share(row.talkAskedBack, row.talk)}`,
    `  end of speech to intent         p50 ${ms(p50)}, p95 ${ms(p95)} (n = ${n})`,
  ].join('\n');
};

/** The report for reading. */
export const hearTable = (report: HearReport): string =>
  [
    ...report.rows.map(rowText),
    '',
    `Model loaded in ${report.modelLoadMs.toFixed(0)} ms; the recogniser's page holds ` +
      (report.recogniserMemoryMb === undefined
        ? 'an unknown amount of memory (this system does not tell)'
        : `${report.recogniserMemoryMb.toFixed(0)} MB resident`) +
      ` after everything; Chromium ${report.browser}; ${report.pages} recognisers at once; ${report.tookS.toFixed(0)} s in all.`,
    report.latency,
  ].join('\n');
