import { err, type Result } from '../result';
import type { OutOfDomain } from './domain';
import { threadOf, type Thread } from './thread';
import { metricCoarse, unifiedSeries } from './thread-table';

export type ThreadProblem =
  | OutOfDomain
  | {
      /** Not written like a thread; no standard pitch for this size; series and threads per inch disagree. */
      readonly code: 'notAThread' | 'pitchMissing' | 'seriesContradicts';
      readonly text: string;
      readonly message: string;
    };

const problem = (
  code: 'notAThread' | 'pitchMissing' | 'seriesContradicts',
  text: string,
  message: string,
): Result<never, ThreadProblem> => err({ code, text, message });

/** "M8", "M8x1", "M10 × 1,25-6g": a tolerance class is accepted and not kept. */
const metric = /^m\s*(\d+(?:\.\d+)?)(?:\s*[x×*-]\s*(\d*\.?\d+))?(?:\s*-\s*\d[a-z](?:\d[a-z])?)?$/i;
/** "3/8-16", "#10-24", "1 1/4-7 UNC", "3/4 UNF", "1-8-2A". */
const unified =
  /^(?:#\s*(\d+)|(?:no\.?\s*)(\d+)|(?:(\d+)[\s-]+)?(\d+)\s*\/\s*(\d+)|(\d+))\s*(?:"|in)?(?:\s*[-–]\s*(\d+))?(?:\s*[-–]?\s*(un[cfsj]?|unr[cf]?|unef))?(?:\s*[-–]\s*[123][ab])?$/i;

/**
 * Reads how threads are written in the trade: metric with or without pitch (ISO 261 coarse where it is left out),
 * unified by size and threads per inch or series (ASME B1.1). Decimal comma and any of x × - are accepted.
 */
export const parseThread = (text: string): Result<Thread, ThreadProblem> => {
  const written = text.trim().replace(',', '.');
  const asMetric = metric.exec(written);
  if (asMetric?.[1] !== undefined) return metricThread(text, asMetric[1], asMetric[2]);
  const asUnified = unified.exec(written);
  if (asUnified !== null) return unifiedThread(text, asUnified);
  return problem('notAThread', text, 'Write a thread like M8, M8x1, 3/8-16 or #10-24.');
};

const metricThread = (
  text: string,
  diameter: string,
  pitch: string | undefined,
): Result<Thread, ThreadProblem> => {
  const diameterMm = Number(diameter);
  const coarse = metricCoarse[String(diameterMm)];
  const pitchMm = pitch === undefined ? coarse : Number(pitch);
  if (pitchMm === undefined) {
    return problem(
      'pitchMissing',
      text,
      `M${diameter} has no standard coarse pitch: add it, as in M${diameter}x1.`,
    );
  }
  const isCoarse = pitchMm === coarse;
  const isFine = coarse === undefined || pitchMm < coarse;
  return threadOf({
    system: 'metric',
    designation: isCoarse ? `M${diameterMm}` : `M${diameterMm}x${pitchMm}`,
    series: isCoarse ? 'coarse' : isFine ? 'fine' : 'other',
    diameterMm,
    pitchMm,
  });
};

const IN_MM = 25.4;

interface UnifiedSize {
  readonly name: string;
  readonly inches: number;
}

const gaugeSize = (gauge: string): UnifiedSize => ({
  name: `#${Number(gauge)}`,
  inches: 0.06 + 0.013 * Number(gauge), // ASME B1.1
});

const unifiedSize = (match: RegExpExecArray): UnifiedSize => {
  const [, hash, numbered, wholes, over, under, inches = '', perInch] = match;
  const gauge = hash ?? numbered;
  if (gauge !== undefined) return gaugeSize(gauge);
  if (over !== undefined && under !== undefined) {
    const name = `${wholes === undefined ? '' : `${wholes} `}${over}/${under}`;
    return { name, inches: Number(wholes ?? 0) + Number(over) / Number(under) };
  }
  // "10-24" without its sign is the gauge, "1-8" the inch: no gauge has the threads of an inch size.
  const { unc, unf } = unifiedSeries[`#${Number(inches)}`] ?? {};
  return perInch !== undefined && [unc, unf].includes(Number(perInch))
    ? gaugeSize(inches)
    : { name: String(Number(inches)), inches: Number(inches) };
};

/** UNC and UNRC are the coarse series, UNF and UNRF the fine one; others name no pitch. */
const seriesPitch = (name: string, series: string | undefined): number | undefined => {
  if (series === 'UNC' || series === 'UNRC') return unifiedSeries[name]?.unc;
  if (series === 'UNF' || series === 'UNRF') return unifiedSeries[name]?.unf;
  return undefined;
};

const unifiedThread = (text: string, match: RegExpExecArray): Result<Thread, ThreadProblem> => {
  const { name, inches } = unifiedSize(match);
  const series = match[8]?.toUpperCase();
  const named = seriesPitch(name, series);
  const perInch = match[7] === undefined ? named : Number(match[7]);
  if (perInch === undefined) {
    return problem('pitchMissing', text, `Add the threads per inch, as in ${name}-16.`);
  }
  if (named !== undefined && perInch !== named) {
    return problem(
      'seriesContradicts',
      text,
      `${name} ${series ?? ''} has ${named} threads per inch, not ${perInch}.`,
    );
  }
  const coarse = unifiedSeries[name]?.unc;
  return threadOf({
    system: 'unified',
    designation: `${name}-${perInch}`,
    series: perInch === coarse ? 'coarse' : perInch > (coarse ?? 0) ? 'fine' : 'other',
    diameterMm: inches * IN_MM,
    pitchMm: IN_MM / perInch,
  });
};
