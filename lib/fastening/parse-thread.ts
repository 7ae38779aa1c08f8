import { err, ok, type Result } from '../result';
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

const unifiedSize = (match: RegExpExecArray): UnifiedSize => {
  const [, hash, numbered, wholes, over, under, inches] = match;
  const gauge = hash ?? numbered;
  if (gauge !== undefined) {
    return { name: `#${Number(gauge)}`, inches: 0.06 + 0.013 * Number(gauge) }; // ASME B1.1
  }
  if (over !== undefined && under !== undefined) {
    const name = `${wholes === undefined ? '' : `${wholes} `}${over}/${under}`;
    return { name, inches: Number(wholes ?? 0) + Number(over) / Number(under) };
  }
  return { name: String(Number(inches)), inches: Number(inches) };
};

const unifiedThread = (text: string, match: RegExpExecArray): Result<Thread, ThreadProblem> => {
  const { name, inches } = unifiedSize(match);
  const standard = unifiedSeries[name] ?? {};
  const series = match[8]?.toUpperCase();
  const named = series?.endsWith('C')
    ? standard.unc
    : series?.endsWith('NF') || series?.endsWith('RF')
      ? standard.unf
      : undefined;
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
  const isCoarse = perInch === standard.unc;
  const isFine = perInch > (standard.unc ?? 0);
  return threadOf({
    system: 'unified',
    designation: `${name}-${perInch}`,
    series: isCoarse ? 'coarse' : isFine ? 'fine' : 'other',
    diameterMm: inches * IN_MM,
    pitchMm: IN_MM / perInch,
  });
};
