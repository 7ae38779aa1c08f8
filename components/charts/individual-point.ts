import { decimalPlaces, formatDecimal, type Limits } from '@/lib/quantity';
import { verdictWords, type Verdict } from '@/lib/metrology';
import type { IndividualsLimits, ZoneRule } from '@/lib/statistics';
import type { Limit } from './limit-line';
import type { Mark } from './point-mark';
import { ruleFigure, ruleWords } from './rule-words';

/** One value of an individuals chart. */
export interface IndividualPoint {
  readonly key: string;
  readonly value: number;
  /** From the value before it; absent at the first. */
  readonly movingRange?: number | undefined;
  readonly verdict: Verdict;
  /** The rules that this point completes. */
  readonly rules: readonly ZoneRule[];
  /** "12 Nov" */
  readonly day: string;
  /** "12 Nov, 10:40" */
  readonly when: string;
  readonly tool?: string | undefined;
  /** The job's timeline at this value. */
  readonly href: string;
}

export interface IndividualsFacts {
  readonly title: string;
  /** Its symbol; values, limits and specification are in it. */
  readonly unit: string;
  /** In the order of time. */
  readonly points: readonly IndividualPoint[];
  /** Absent where there are too few values. */
  readonly limits?: IndividualsLimits | undefined;
  readonly spec?: Limits | undefined;
}

export const markOf = ({ verdict, rules }: IndividualPoint): Mark => {
  if (verdict === 'outOfSpec') return rules.length > 0 ? 'outOfSpecAndRule' : 'outOfSpec';
  if (rules.length > 0) return 'rule';
  return verdict === 'notProvable' ? 'notProvable' : 'plain';
};

/** A range beyond its limit is a change too sudden to be chance. */
export const isWild = ({ movingRange }: IndividualPoint, limits?: IndividualsLimits): boolean =>
  movingRange !== undefined && limits !== undefined && movingRange > limits.movingRangeUpper;

/** Writes a value of this chart: as many places as the values were given with, at most two. */
export const sayer = (points: readonly IndividualPoint[]): ((value: number) => string) => {
  const places = Math.max(0, ...points.map(({ value }) => decimalPlaces(value, 2)));
  return (value) => formatDecimal(value, places);
};

/** "rule 1: beyond three sigma" */
export const rulesText = (rules: readonly ZoneRule[]): string =>
  rules.map((rule) => `rule ${ruleFigure(rule)}: ${ruleWords[rule]}`).join('; ');

export const rangeText = 'moving range beyond its limit';

/** Everything that a point says, for whoever does not see it. */
export const pointText = (
  point: IndividualPoint,
  { unit, points, limits }: IndividualsFacts,
): string =>
  [
    `${point.when}: ${sayer(points)(point.value)} ${unit}, ${verdictWords[point.verdict]}`,
    ...(point.rules.length === 0 ? [] : [rulesText(point.rules)]),
    ...(isWild(point, limits) ? [rangeText] : []),
  ].join('; ');

/** The lines of the values, from the specification inwards. */
export const limitLines = ({ points, limits, spec }: IndividualsFacts): readonly Limit[] => {
  const say = sayer(points);
  const lines: Limit[] = [];
  const add = (
    name: string,
    value: number | undefined,
    look: Pick<Limit, 'kind' | 'out'>,
  ): void => {
    if (value !== undefined) lines.push({ ...look, value, words: `${name} ${say(value)}` });
  };
  add('Spec max', spec?.upper, { kind: 'spec', out: 'above' });
  add('Spec min', spec?.lower, { kind: 'spec', out: 'below' });
  add('Upper limit', limits?.upper, { kind: 'control' });
  add('Mean', limits?.centre, { kind: 'centre' });
  add('Lower limit', limits?.lower, { kind: 'control' });
  return lines;
};

/** What there is to see, in sentences. */
export const individualsText = (facts: IndividualsFacts): string => {
  const { unit, points, limits, spec } = facts;
  const say = sayer(points);
  const count = (of: (point: IndividualPoint) => boolean): number => points.filter(of).length;
  const [first] = points;
  const last = points.at(-1);
  if (first === undefined || last === undefined) return 'No values.';
  const span = first.day === last.day ? `on ${first.day}` : `from ${first.day} to ${last.day}`;
  const { lower, upper } = spec ?? {};
  const asked =
    lower !== undefined && upper !== undefined
      ? `${say(lower)} to ${say(upper)}`
      : lower !== undefined
        ? `at least ${say(lower)}`
        : upper === undefined
          ? undefined
          : `at most ${say(upper)}`;
  return [
    `${points.length} ${points.length === 1 ? 'value' : 'values'} ${span}.`,
    limits === undefined
      ? 'Too few for limits.'
      : `Mean ${say(limits.centre)} ${unit}, limits of the process ${say(limits.lower)} to ${say(limits.upper)} ${unit}${limits.preliminary ? ' (a first guess: fewer than 20 values)' : ''}.`,
    ...(asked === undefined ? [] : [`Specification ${asked} ${unit}.`]),
    `${count(({ verdict }) => verdict === 'outOfSpec')} out of spec, ${count(({ rules }) => rules.length > 0)} break a rule, ${count((point) => isWild(point, limits))} with a moving range beyond its limit.`,
  ].join(' ');
};
