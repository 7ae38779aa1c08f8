import type { ToleranceInterval } from '@/lib/fastening';
import type { Verdict } from '@/lib/metrology';

const width = 600;
const height = 60;
const rule = 40;

/** Where the ends of the drawn scale lie: the window fills the middle half; a far reading stays at the end. */
const span = ({ lower, upper, target }: ToleranceInterval): { from: number; to: number } => {
  const one = lower ?? upper ?? target ?? 0;
  const low = lower ?? one - Math.max(Math.abs(one) * 0.2, 1e-6);
  const high = upper ?? one + Math.max(Math.abs(one) * 0.2, 1e-6);
  const half = Math.max((high - low) / 2, 1e-9);
  return { from: low - half, to: high + half };
};

/**
 * The accepted window as a graduated rule, with the reading as a pointer. It only repeats what the figures beside it
 * say, so it is hidden from readers of text.
 */
export function WindowScale({
  interval,
  reading,
}: {
  readonly interval: ToleranceInterval;
  readonly reading?: { readonly canonical: number; readonly verdict: Verdict } | undefined;
}) {
  const { from, to } = span(interval);
  const at = (value: number): number =>
    Math.min(width - 10, Math.max(10, ((value - from) / (to - from)) * width));
  const left = interval.lower === undefined ? 10 : at(interval.lower);
  const right = interval.upper === undefined ? width - 10 : at(interval.upper);
  const ticks = Array.from({ length: 41 }, (_, index) => 10 + (index * (width - 20)) / 40);
  return (
    <svg
      viewBox={`0 0 ${width} ${height}`}
      aria-hidden="true"
      className="h-[2.6rem] w-[40rem] max-w-full"
      preserveAspectRatio="xMinYMid meet"
    >
      <rect
        x={left}
        y={rule - 22}
        width={right - left}
        height="22"
        className="fill-good"
        opacity="0.28"
      />
      {ticks.map((x, index) => (
        <path
          key={x}
          d={`M${x.toFixed(1)} ${rule}V${index % 10 === 0 ? rule + 16 : index % 5 === 0 ? rule + 12 : rule + 7}`}
          className="stroke-quiet"
          strokeWidth="1.5"
        />
      ))}
      <path d={`M10 ${rule}H${width - 10}`} className="stroke-ink" strokeWidth="2.5" />
      {interval.lower === undefined ? null : (
        <path
          d={`M${left + 14} ${rule - 22}H${left}V${rule}`}
          className="stroke-good"
          fill="none"
          strokeWidth="5"
        />
      )}
      {interval.upper === undefined ? null : (
        <path
          d={`M${right - 14} ${rule - 22}H${right}V${rule}`}
          className="stroke-good"
          fill="none"
          strokeWidth="5"
        />
      )}
      {interval.target === undefined ? null : (
        <path
          d={`M${at(interval.target)} ${rule - 22}V${rule}`}
          className="stroke-good"
          strokeWidth="3"
        />
      )}
      {reading === undefined ? null : (
        <path
          d={`M${at(reading.canonical)} ${rule - 2}l-11 -22h22Z`}
          className={reading.verdict === 'inSpec' ? 'fill-ink' : 'fill-bad'}
        />
      )}
    </svg>
  );
}
