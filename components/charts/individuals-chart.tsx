import { scaleLinear } from 'd3-scale';
import { verdictWords } from '@/lib/metrology';
import { dayTicks, domainOf } from './axis-ticks';
import { ChartFrame, WHOLE } from './chart-frame';
import {
  individualsText,
  isWild,
  limitLines,
  markOf,
  pointText,
  rangeText,
  rulesText,
  sayer,
  type IndividualPoint,
  type IndividualsFacts,
} from './individual-point';
import { IndividualsKey } from './individuals-key';
import type { Limit } from './limit-line';
import { PointMark } from './point-mark';
import { ruleFigure } from './rule-words';
import { LEFT, RIGHT, ValuesPanel } from './values-panel';

const VALUES = { top: 24, bottom: 262 };
const RANGES = { top: 306, bottom: 396 };
const HEIGHT = 418;
/** Units between two days on the axis. */
const DAY_GAP = 56;
/** From here on dots of the usual size would run together. */
const MANY_POINTS = 120;
/** Half of what a finger or a pointer may hit. */
const REACH = 9;

/**
 * A point that leads to its job. Only what stands out is in the order of the Tab key; the table has a link for each,
 * so that nobody must go through hundreds of points.
 */
function Point({
  point,
  says,
  below,
  small,
  x,
  y,
}: {
  readonly point: IndividualPoint;
  readonly says: string;
  /** It lies below the mean: so does its figure, off the line. */
  readonly below: boolean;
  readonly small: boolean;
  readonly x: number;
  readonly y: number;
}) {
  const mark = markOf(point);
  return (
    <a href={point.href} aria-label={says} tabIndex={mark === 'plain' ? -1 : 0}>
      <title>{says}</title>
      <g transform={`translate(${x} ${y})`} data-mark={mark}>
        <circle r={REACH} fill="transparent" />
        <PointMark mark={mark} small={small} />
        {point.rules.length === 0 ? null : (
          <text y={below ? 20 : -11} textAnchor="middle" className="fill-ink font-bold">
            {Math.min(...point.rules.map(ruleFigure))}
            {point.rules.length > 1 ? '+' : ''}
          </text>
        )}
      </g>
    </a>
  );
}

function Days({ days, x }: { days: readonly string[]; x: (at: number) => number }) {
  const gap = Math.max(1, Math.ceil(DAY_GAP / Math.max(1e-6, x(1) - x(0))));
  return (
    <g aria-hidden="true" textAnchor="middle" className="fill-quiet">
      {dayTicks(days, gap).map(({ at, day }) => (
        <g key={at}>
          <line
            x1={x(at)}
            x2={x(at)}
            y1={RANGES.bottom}
            y2={RANGES.bottom + 5}
            className="stroke-edge"
          />
          <text x={x(at)} y={RANGES.bottom + 17}>
            {day}
          </text>
        </g>
      ))}
    </g>
  );
}

/** Values in the order of time with the limits of the process and of the sheet, and how far each is from the one before. */
export function IndividualsChart(facts: IndividualsFacts) {
  const { title, unit, points, limits, spec } = facts;
  const say = sayer(points);
  const x = scaleLinear([-0.6, Math.max(1, points.length) - 0.4], [LEFT, RIGHT]);
  const small = points.length > MANY_POINTS;
  const lines = limitLines(facts);
  const y = scaleLinear(domainOf([...points, ...lines].map(({ value }) => value)), [
    VALUES.bottom,
    VALUES.top,
  ]);
  const ranges = points.map(({ movingRange }) => movingRange);
  const rangeLimits: readonly Limit[] =
    limits === undefined
      ? []
      : [
          {
            kind: 'control',
            value: limits.movingRangeUpper,
            words: `Upper limit ${say(limits.movingRangeUpper)}`,
          },
          {
            kind: 'centre',
            value: limits.averageMovingRange,
            words: `Mean ${say(limits.averageMovingRange)}`,
          },
        ];
  const most = Math.max(0, limits?.movingRangeUpper ?? 0, ...ranges.map((range) => range ?? 0));
  const yRange = scaleLinear([0, most === 0 ? 1 : most * 1.1], [RANGES.bottom, RANGES.top]);
  return (
    <ChartFrame
      title={title}
      says={individualsText(facts)}
      width={WHOLE}
      height={HEIGHT}
      linked
      legend={
        <IndividualsKey
          points={points}
          limits={limits}
          hasSpec={spec?.lower !== undefined || spec?.upper !== undefined}
        />
      }
      table={{
        caption: `${title}: all ${points.length} values, in the order of time`,
        columns: ['When', `Value, ${unit}`, `Moving range, ${unit}`, 'Verdict', 'Tool', 'Marks'],
        rows: points.map((point) => ({
          key: point.key,
          cells: [
            <a key="when" href={point.href} className="underline">
              {point.when}
            </a>,
            say(point.value),
            point.movingRange === undefined ? '–' : say(point.movingRange),
            verdictWords[point.verdict],
            point.tool ?? '–',
            [
              ...(point.rules.length === 0 ? [] : [rulesText(point.rules)]),
              ...(isWild(point, limits) ? [rangeText] : []),
            ].join('; ') || '–',
          ],
        })),
      }}
    >
      <ValuesPanel
        name={`Values, ${unit}`}
        values={points.map(({ value }) => value)}
        limits={lines}
        x={x}
        y={y}
      >
        {points.map((point, at) => (
          <Point
            key={point.key}
            point={point}
            says={pointText(point, facts)}
            below={limits !== undefined && point.value < limits.centre}
            small={small}
            x={x(at)}
            y={y(point.value)}
          />
        ))}
      </ValuesPanel>
      <ValuesPanel
        name={`Moving range, ${unit}`}
        values={ranges}
        limits={rangeLimits}
        x={x}
        y={yRange}
      >
        <g aria-hidden="true">
          {points.map((point, at) =>
            point.movingRange === undefined ? null : (
              <g key={point.key} transform={`translate(${x(at)} ${yRange(point.movingRange)})`}>
                <PointMark mark={isWild(point, limits) ? 'rule' : 'plain'} small={small} />
                {isWild(point, limits) ? (
                  <text x={9} y={4} className="fill-ink font-bold">
                    R
                  </text>
                ) : null}
              </g>
            ),
          )}
        </g>
      </ValuesPanel>
      <Days days={points.map(({ day }) => day)} x={x} />
    </ChartFrame>
  );
}
