import { scaleLinear } from 'd3-scale';
import type { HoldReasonRow } from '@/lib/review';
import { minutesText } from '../design/duration';
import { ChartFrame, HALF } from './chart-frame';
import { CountAxis } from './count-axis';
import { RowLabel } from './row-label';

/** More bars than this are in the table only. */
const MOST_BARS = 12;
const LABELS = 168;
const RIGHT = HALF - 96;
const TOP = 8;
const ROW = 30;

/** How often jobs were held for each reason, and how long in all. */
export function HoldsChart({ bars }: { readonly bars: readonly HoldReasonRow[] }) {
  const title = 'Holds by reason';
  const drawn = bars.slice(0, MOST_BARS);
  const most = Math.max(0, ...bars.map(({ count }) => count));
  const total = bars.reduce((sum, { count }) => sum + count, 0);
  const minutes = bars.reduce((sum, { totalMinutes }) => sum + totalMinutes, 0);
  const x = scaleLinear([0, Math.max(1, most)], [LABELS, RIGHT]);
  const bottom = TOP + drawn.length * ROW;
  const [first] = bars;
  return (
    <ChartFrame
      title={title}
      says={
        first === undefined
          ? 'No holds.'
          : `${total} holds, ${minutesText(minutes)} in all. The longest in all: ${first.reason}, ${minutesText(first.totalMinutes)}.`
      }
      width={HALF}
      height={bottom + 22}
      legend={
        <p className="text-note text-quiet">
          Bars: how often. Beside them: how often, and how long in all.
        </p>
      }
      table={{
        caption: 'Holds by reason, the longest in all first',
        columns: ['Reason', 'Holds', 'Still on hold', 'In all', 'Median', 'Longest'],
        rows: bars.map((bar) => ({
          key: bar.reason,
          cells: [
            bar.reason,
            bar.count,
            bar.running,
            minutesText(bar.totalMinutes),
            minutesText(bar.medianMinutes),
            minutesText(bar.longestMinutes),
          ],
        })),
      }}
    >
      <CountAxis x={x} most={most} top={TOP} bottom={bottom} />
      {drawn.map(({ reason, count, totalMinutes }, at) => {
        const middle = TOP + at * ROW + ROW / 2;
        return (
          <g key={reason}>
            <RowLabel text={reason} x={LABELS - 8} y={middle} width={27} />
            <rect
              x={LABELS}
              y={middle - 10}
              width={x(count) - LABELS}
              height={20}
              className="fill-act"
            />
            <text x={x(count) + 8} y={middle + 4} className="fill-ink">
              {count}× · {minutesText(totalMinutes)}
            </text>
          </g>
        );
      })}
    </ChartFrame>
  );
}
