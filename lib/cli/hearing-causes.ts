import { judge, type Hearing } from './hearing-score';

/** What became of phrases, and why: one row a cause, one column a level of noise. */
export interface HearCauses {
  readonly levels: readonly string[];
  readonly rows: readonly { readonly cause: string; readonly counts: readonly number[] }[];
}

/** In words, for one phrase; the last thing that was understood decides. */
const causeOf = (hearing: Hearing): string => {
  const verdict = judge(hearing);
  if (verdict.actedWrongly) return 'wrong, taken unasked';
  const found = hearing.result.outcomes.map(({ understanding }) => understanding);
  const last = found.findLast(({ kind }) => kind === 'intent');
  if (last?.kind !== 'intent')
    return `nothing: ${[...new Set(found.flatMap((one) => (one.kind === 'nothing' ? [one.why] : [])))].join('; ') || 'no words'}`;
  const words = verdict.phraseRight ? 'right' : 'wrong';
  return last.certainty === 'sure' ? `${words} at once` : `${words}, asked: ${last.why ?? ''}`;
};

const levelOf = ({ recording, snrDb }: Hearing): string =>
  snrDb === undefined ? recording.group : `${recording.group}, ${snrDb} dB`;

export const hearCauses = (hearings: readonly Hearing[]): HearCauses => {
  const phrases = hearings
    .filter((one) => one.noiseAlone !== true && judge(one).kind === 'phrase')
    .map((one) => ({ level: levelOf(one), cause: causeOf(one) }));
  const levels = [...new Set(phrases.map(({ level }) => level))];
  const causes = [...new Set(phrases.map(({ cause }) => cause))].sort();
  return {
    levels,
    rows: causes.map((cause) => ({
      cause,
      counts: levels.map(
        (level) => phrases.filter((one) => one.cause === cause && one.level === level).length,
      ),
    })),
  };
};

/** As a table of Markdown. */
export const causesText = ({ levels, rows }: HearCauses): string =>
  [
    `| what became of it | ${levels.join(' | ')} |`,
    `| --- |${levels.map(() => ' ---: |').join('')}`,
    ...rows.map(({ cause, counts }) => `| ${cause} | ${counts.join(' | ')} |`),
  ].join('\n');
