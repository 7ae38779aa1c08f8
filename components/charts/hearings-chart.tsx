import { scaleLinear } from 'd3-scale';
import { useId } from 'react';
import type { PhraseHearings } from '@/lib/review';
import { ChartFrame, HALF } from './chart-frame';
import { CountAxis } from './count-axis';
import { Hatching } from './hatching';
import { percent } from '../design/percent';
import { RowLabel } from './row-label';

/** More bars than this are in the table only. */
const MOST_BARS = 12;
const LABELS = 168;
const RIGHT = HALF - 96;
const TOP = 8;
const ROW = 30;

const falseOf = ({ declined, takenBack }: PhraseHearings): number => declined + takenBack;
const troubleOf = (bar: PhraseHearings): number => falseOf(bar) + bar.saidAgain;

/** How often each phrase was heard falsely, or had to be said again: what the shop should say in another way. */
export function HearingsChart({ bars, heard }: { bars: readonly PhraseHearings[]; heard: number }) {
  const hatched = useId();
  const troubled = bars.filter((bar) => troubleOf(bar) > 0);
  const drawn = troubled.slice(0, MOST_BARS);
  const most = Math.max(0, ...drawn.map(troubleOf));
  const x = scaleLinear([0, Math.max(1, most)], [LABELS, RIGHT]);
  const bottom = TOP + drawn.length * ROW;
  const sum = (of: (bar: PhraseHearings) => number): number =>
    bars.reduce((total, bar) => total + of(bar), 0);
  const [first] = troubled;
  return (
    <ChartFrame
      title="Phrases that fail"
      says={
        first === undefined
          ? `${heard} hearings, none false and none said again.`
          : [
              `${heard} hearings: ${sum(falseOf)} false, ${sum(({ saidAgain }) => saidAgain)} said again.`,
              `Most troubled: “${first.phrase}”, ${troubleOf(first)} of ${first.heard}.`,
            ].join(' ')
      }
      width={HALF}
      height={bottom + 22}
      legend={
        <ul className="flex flex-wrap gap-x-6 text-note text-quiet">
          <li className="flex items-center gap-2">
            <svg viewBox="0 0 24 16" aria-hidden="true" className="h-[1em]">
              <rect width={24} height={16} className="fill-act" />
            </svg>
            False: declined when asked back, or taken back
          </li>
          <li className="flex items-center gap-2">
            <svg viewBox="0 0 24 16" aria-hidden="true" className="h-[1em]">
              <Hatching id={`${hatched}key`} />
              <rect
                x={1}
                y={1}
                width={22}
                height={14}
                fill={`url(#${hatched}key)`}
                strokeWidth={1.5}
                className="stroke-act"
              />
            </svg>
            Repeated: had to be said again
          </li>
        </ul>
      }
      table={{
        caption: 'Hearings by phrase, the most troubled first',
        columns: [
          'Phrase',
          'Heard',
          'Asked back',
          'Declined',
          'Taken back',
          'Said again',
          'Troubled (95 %)',
        ],
        rows: bars.map((bar) => ({
          key: bar.phrase,
          cells: [
            bar.phrase,
            bar.heard,
            bar.askedBack,
            bar.declined,
            bar.takenBack,
            bar.saidAgain,
            `${percent(bar.troubled.share)} (${percent(bar.troubled.from)} to ${percent(bar.troubled.to)})`,
          ],
        })),
      }}
    >
      <Hatching id={hatched} />
      <CountAxis x={x} most={most} top={TOP} bottom={bottom} />
      {drawn.map((bar, at) => {
        const middle = TOP + at * ROW + ROW / 2;
        const end = x(falseOf(bar));
        return (
          <g key={bar.phrase}>
            <RowLabel text={bar.phrase} x={LABELS - 8} y={middle} width={27} />
            <rect
              x={LABELS}
              y={middle - 10}
              width={end - LABELS}
              height={20}
              className="fill-act"
            />
            {bar.saidAgain === 0 ? null : (
              <rect
                x={end}
                y={middle - 10}
                width={x(troubleOf(bar)) - end}
                height={20}
                fill={`url(#${hatched})`}
                strokeWidth={1.5}
                className="stroke-act"
              />
            )}
            <text x={x(troubleOf(bar)) + 8} y={middle + 4} className="fill-ink">
              {troubleOf(bar)} of {bar.heard}
            </text>
          </g>
        );
      })}
    </ChartFrame>
  );
}
