import { ok, type Result } from '../result';
import { refuse, type StatisticsError } from './error';

/** The four zone rules (Western Electric 1956; NIST/SEMATECH e-Handbook 6.3.2), each on one side of the centre. */
export const zoneRules = ['beyondThree', 'twoOfThree', 'fourOfFive', 'eightInARow'] as const;
export type ZoneRule = (typeof zoneRules)[number];

interface Pattern {
  readonly rule: ZoneRule;
  /** At least `hits` of the last `span` points beyond `sigmas` standard deviations. */
  readonly hits: number;
  readonly span: number;
  readonly sigmas: number;
}

const patterns: readonly Pattern[] = [
  { rule: 'beyondThree', hits: 1, span: 1, sigmas: 3 },
  { rule: 'twoOfThree', hits: 2, span: 3, sigmas: 2 },
  { rule: 'fourOfFive', hits: 4, span: 5, sigmas: 1 },
  { rule: 'eightInARow', hits: 8, span: 8, sigmas: 0 },
];

const LONGEST_SPAN = 8;

export interface ZoneSignal {
  /** Index of the point that completes the pattern. */
  readonly at: number;
  readonly rule: ZoneRule;
  readonly side: 'above' | 'below';
}

/** What a chart's rules say of its points, in the order of time; one pass, the last eight points are kept. */
export const zoneSignals = (
  values: readonly number[],
  { centre, sigma }: { readonly centre: number; readonly sigma: number },
): Result<readonly ZoneSignal[], StatisticsError> => {
  if (!Number.isFinite(centre) || !Number.isFinite(sigma) || sigma < 0) {
    return refuse('outOfDomain', 'A chart has a centre and a spread that is not below zero.');
  }
  if (!values.every(Number.isFinite)) return refuse('notANumber', 'A value is no number.');
  const signals: ZoneSignal[] = [];
  const recent: number[] = [];
  for (const [at, value] of values.entries()) {
    recent.push(value - centre);
    if (recent.length > LONGEST_SPAN) recent.shift();
    const side = value > centre ? 'above' : 'below';
    const sign = value > centre ? 1 : -1;
    for (const { rule, hits, span, sigmas } of patterns) {
      const isBeyond = (distance: number): boolean => sign * distance > sigmas * sigma;
      if (!isBeyond(value - centre)) continue;
      if (recent.slice(-span).filter(isBeyond).length >= hits) signals.push({ at, rule, side });
    }
  }
  return ok(signals);
};
