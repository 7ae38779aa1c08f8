import { scaleLinear } from 'd3-scale';
import { ENOUGH_RUNS } from '@/lib/statistics';
import { ChartFrame, WHOLE } from './chart-frame';
import { percent } from '../design/percent';
import { RowLabel } from './row-label';

export interface StepTimesRow {
  readonly key: string;
  /** "4. Drain the coolant" */
  readonly label: string;
  readonly bookMinutes: number;
  readonly runs: number;
  /** Minutes. */
  readonly quantiles?:
    | {
        readonly p10: number;
        readonly p25: number;
        readonly p50: number;
        readonly p75: number;
        readonly p90: number;
      }
    | undefined;
  /** What a lognormal with the same logarithms would have, minutes; absent where there are too few runs for a curve. */
  readonly lognormal?:
    { readonly p50: number; readonly p80: number; readonly p95: number } | undefined;
  /** Share of the runs over the book time, 0–1. */
  readonly overBook: number;
  readonly href?: string;
}

const LABELS = 268;
const RIGHT = WHOLE - 196;
const TOP = 26;
const ROW = 30;
/** Further out, a whisker ends in an arrow: one slow step must not press all others together. */
const MOST_TIMES_BOOK = 4;

const minutesText = (minutes: number): string =>
  `${minutes < 10 ? (Math.round(minutes * 10) / 10).toFixed(1) : Math.round(minutes)} min`;

const saysOf = (rows: readonly StepTimesRow[]): string => {
  const timed = rows.filter(({ runs, quantiles }) => runs >= ENOUGH_RUNS && quantiles);
  const pace = ({ quantiles, bookMinutes }: StepTimesRow): number =>
    (quantiles?.p50 ?? 0) / bookMinutes;
  const over = timed.filter((row) => pace(row) > 1);
  const slowest = timed.reduce<StepTimesRow | undefined>(
    (worst, row) => (worst === undefined || pace(row) > pace(worst) ? row : worst),
    undefined,
  );
  if (slowest?.quantiles === undefined)
    return `${rows.length} steps, none with ${ENOUGH_RUNS} runs yet.`;
  return [
    `${over.length} of ${timed.length} steps with at least ${ENOUGH_RUNS} runs take longer than their book time in half the runs or more.`,
    `Slowest against the book: ${slowest.label}, median ${minutesText(slowest.quantiles.p50)} for ${minutesText(slowest.bookMinutes)}.`,
  ].join(' ');
};

/** How long each step took, in times of its book time: half the runs in the box, four in five between the whiskers. */
export function StepTimesChart({
  title,
  rows,
  enoughForFit,
}: {
  readonly title: string;
  readonly rows: readonly StepTimesRow[];
  /** Runs from which on the 95 % point of a fitted curve is drawn. */
  readonly enoughForFit?: number;
}) {
  const highest = rows.map(({ quantiles, bookMinutes }) => (quantiles?.p90 ?? 0) / bookMinutes);
  const most = Math.min(MOST_TIMES_BOOK, Math.max(1.5, ...highest) * 1.04);
  const x = scaleLinear([0, most], [LABELS, RIGHT]).clamp(true);
  const bottom = TOP + rows.length * ROW;
  return (
    <ChartFrame
      title={title}
      says={saysOf(rows)}
      width={WHOLE}
      height={bottom + 22}
      linked={rows.some(({ href }) => href !== undefined)}
      legend={
        <p className="text-note text-quiet">
          Dashed upright: the book time of each step. Box: the middle half of the runs, its bar the
          median. Whiskers: 10 % to 90 %. Below {ENOUGH_RUNS} runs only the median is drawn.
          {rows.some(({ lognormal }) => lognormal !== undefined)
            ? ` Triangle: 95 % by a lognormal curve through the runs${enoughForFit === undefined ? '' : `, from ${enoughForFit} of them`}.`
            : ''}
        </p>
      }
      table={{
        caption: `${title}, minutes`,
        columns: [
          'Step',
          'Book',
          'Runs',
          '10 %',
          '25 %',
          'Median',
          '75 %',
          '90 %',
          '95 %, curve',
          'Over book',
        ],
        rows: rows.map(({ key, label, bookMinutes, runs, quantiles, lognormal, overBook }) => ({
          key,
          cells: [
            label,
            bookMinutes,
            runs,
            ...(['p10', 'p25', 'p50', 'p75', 'p90'] as const).map((p) =>
              quantiles === undefined ? '–' : quantiles[p].toFixed(1),
            ),
            lognormal === undefined ? '–' : lognormal.p95.toFixed(1),
            runs === 0 ? '–' : percent(overBook),
          ],
        })),
      }}
    >
      <g aria-hidden="true" className="fill-quiet" textAnchor="middle">
        {x.ticks(8).map((tick) => (
          <g key={tick}>
            <line x1={x(tick)} x2={x(tick)} y1={TOP} y2={bottom} className="stroke-line" />
            <text x={x(tick)} y={bottom + 15}>
              {tick}×
            </text>
          </g>
        ))}
        <text x={x(1)} y={TOP - 10} className="fill-ink font-bold">
          book time
        </text>
      </g>
      {rows.map(({ key, label, href, bookMinutes, runs, quantiles, lognormal }, at) => {
        const middle = TOP + at * ROW + ROW / 2;
        const to = (minutes: number): number => x(minutes / bookMinutes);
        return (
          <g key={key}>
            <RowLabel text={label} x={LABELS - 8} y={middle} width={44} href={href} />
            {quantiles === undefined || runs < ENOUGH_RUNS ? null : (
              <>
                <line
                  x1={to(quantiles.p10)}
                  x2={to(quantiles.p90)}
                  y1={middle}
                  y2={middle}
                  strokeWidth={2}
                  className="stroke-ink"
                />
                <rect
                  x={to(quantiles.p25)}
                  y={middle - 7}
                  width={Math.max(1, to(quantiles.p75) - to(quantiles.p25))}
                  height={14}
                  strokeWidth={1.5}
                  className="fill-sunk stroke-ink"
                />
                {quantiles.p90 / bookMinutes > most ? (
                  <path
                    d={`M${RIGHT - 6} ${middle - 5}L${RIGHT} ${middle}L${RIGHT - 6} ${middle + 5}`}
                    fill="none"
                    strokeWidth={2}
                    className="stroke-ink"
                  />
                ) : null}
              </>
            )}
            {quantiles === undefined ? null : (
              <line
                x1={to(quantiles.p50)}
                x2={to(quantiles.p50)}
                y1={middle - 9}
                y2={middle + 9}
                strokeWidth={4}
                className="stroke-act"
              />
            )}
            {lognormal === undefined || lognormal.p95 / bookMinutes > most ? null : (
              <path
                d={`M${to(lognormal.p95)} ${middle + 2}l5 9h-10z`}
                strokeWidth={1.2}
                className="fill-surface stroke-ink"
              />
            )}
            <text x={RIGHT + 12} y={middle + 4} className="fill-ink">
              {quantiles === undefined
                ? 'no runs'
                : `${minutesText(quantiles.p50)} of ${minutesText(bookMinutes)}, ${runs} ${runs === 1 ? 'run' : 'runs'}`}
            </text>
          </g>
        );
      })}
      <line
        x1={x(1)}
        x2={x(1)}
        y1={TOP - 4}
        y2={bottom}
        strokeWidth={2}
        strokeDasharray="7 3"
        className="stroke-ink"
      />
    </ChartFrame>
  );
}
