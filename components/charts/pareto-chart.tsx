import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import type { ParetoBar } from '@/lib/statistics';
import { ChartFrame, HALF } from './chart-frame';
import { CountAxis } from './count-axis';
import { percent } from '../design/percent';
import { RowLabel } from './row-label';

export interface ParetoItem extends Omit<ParetoBar, 'name'> {
  readonly key: string;
  readonly label: string;
  /** Where its bar leads. */
  readonly href?: string;
}

export interface ParetoChartProps {
  readonly title: string;
  /** What is counted, in the plural: "deviations". */
  readonly what: string;
  /** In the order of `pareto` of lib/statistics: the largest first. */
  readonly items: readonly ParetoItem[];
}

/** More bars than this are in the table only. */
const MOST_BARS = 12;

const LABELS = 168;
const RIGHT = HALF - 40;
const TOP = 26;
const ROW = 30;

const saysOf = (what: string, items: readonly ParetoItem[], total: number): string => {
  const [first] = items;
  if (first === undefined) return `No ${what}.`;
  const vital = items.findIndex(({ cumulative }) => cumulative >= 0.8) + 1;
  return [
    `${total} ${what}.`,
    `Most often: ${first.label}, ${first.count} (${percent(first.share)}).`,
    ...(vital > 0 && vital < items.length
      ? [
          `The first ${vital} of ${items.length} make up ${percent(items[vital - 1]?.cumulative ?? 1)}.`,
        ]
      : []),
    ...(items.length > MOST_BARS ? [`Drawn are the first ${MOST_BARS}.`] : []),
  ].join(' ');
};

/** Bars by count, the largest on top, and the line of all up to each; both on the one scale, so that they can be compared. */
export function ParetoChart({ title, what, items }: ParetoChartProps) {
  const drawn = items.slice(0, MOST_BARS);
  const total = items.reduce((sum, { count }) => sum + count, 0);
  const x = scaleLinear([0, Math.max(1, total)], [LABELS, RIGHT]);
  const bottom = TOP + drawn.length * ROW;
  const middle = (at: number): number => TOP + at * ROW + ROW / 2;
  const upTo = line<ParetoItem>(
    ({ cumulative }) => x(cumulative * total),
    (_, at) => middle(at),
  )(drawn);
  return (
    <ChartFrame
      title={title}
      says={saysOf(what, items, total)}
      width={HALF}
      height={bottom + 22}
      linked={items.some(({ href }) => href !== undefined)}
      legend={
        <p className="text-note text-quiet">
          Bars: how many. Line with dots: this and all above, of all {what}.
        </p>
      }
      table={{
        caption: `${title}: all ${items.length}`,
        columns: ['What', 'Count', 'Share', 'This and all above'],
        rows: items.map(({ key, label, count, share, cumulative }) => ({
          key,
          cells: [label, count, percent(share), percent(cumulative)],
        })),
      }}
    >
      <CountAxis x={x} most={total} top={TOP} bottom={bottom} />
      <g className="fill-quiet" textAnchor="middle">
        {[0, 0.5, 1].map((share) => (
          <text key={share} x={x(share * total)} y={TOP - 9}>
            {percent(share)}
          </text>
        ))}
      </g>
      {drawn.map(({ key, label, href, count }, at) => (
        <g key={key}>
          <RowLabel text={label} x={LABELS - 8} y={middle(at)} width={27} href={href} />
          <rect
            x={LABELS}
            y={middle(at) - 10}
            width={x(count) - LABELS}
            height={20}
            className="fill-act"
          />
          <text x={RIGHT + 8} y={middle(at) + 4} className="fill-ink font-bold">
            {count}
          </text>
        </g>
      ))}
      <path d={upTo ?? undefined} fill="none" strokeWidth={2} className="stroke-unsure" />
      {drawn.map(({ key, cumulative }, at) => (
        <circle
          key={key}
          cx={x(cumulative * total)}
          cy={middle(at)}
          r={4}
          strokeWidth={2}
          className="fill-surface stroke-unsure"
        />
      ))}
    </ChartFrame>
  );
}
