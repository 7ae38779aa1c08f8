import type { ScaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import type { ReactNode } from 'react';
import { WHOLE } from './chart-frame';
import { LimitLine, type Limit } from './limit-line';
import { spreadLabels } from './spread-labels';

export const LEFT = 58;
export const RIGHT = WHOLE - 150;
const LABEL_GAP = 14;

/** Values in a row with the limits they are held against, each named at its right end. */
export function ValuesPanel({
  name,
  values,
  limits,
  x,
  y,
  children,
}: {
  readonly name: string;
  /** Undefined where there is none: the line has a gap there. */
  readonly values: readonly (number | undefined)[];
  readonly limits: readonly Limit[];
  readonly x: (at: number) => number;
  readonly y: ScaleLinear<number, number>;
  readonly children: ReactNode;
}) {
  const [bottom = 0, top = 0] = y.range();
  const path = line<number | undefined>(
    (_, at) => x(at),
    (value) => y(value ?? 0),
  ).defined((value) => value !== undefined)(values);
  const ticks = y.ticks(bottom - top < 120 ? 3 : 6);
  const words = y.tickFormat(bottom - top < 120 ? 3 : 6);
  const places = spreadLabels(
    limits.map(({ value }) => y(value)),
    { gap: LABEL_GAP, from: top, to: bottom },
  );
  return (
    <>
      <g aria-hidden="true">
        <text x={4} y={top - 8} className="fill-ink font-bold">
          {name}
        </text>
        {ticks.map((tick) => (
          <g key={tick}>
            <line x1={LEFT} x2={RIGHT} y1={y(tick)} y2={y(tick)} className="stroke-line" />
            <text x={LEFT - 8} y={y(tick) + 4} textAnchor="end" className="fill-quiet">
              {words(tick)}
            </text>
          </g>
        ))}
        <line x1={LEFT} x2={LEFT} y1={top} y2={bottom} className="stroke-edge" />
        {limits.map(({ kind, out, value, words: said }, index) => (
          <g key={said}>
            <LimitLine kind={kind} {...(out && { out })} from={LEFT} to={RIGHT} y={y(value)} />
            <path
              d={`M${RIGHT} ${y(value)}L${RIGHT + 10} ${places[index] ?? 0}`}
              fill="none"
              className="stroke-edge"
            />
            <text
              x={RIGHT + 14}
              y={(places[index] ?? 0) + 4}
              className={`fill-ink ${kind === 'spec' ? 'font-bold' : ''}`}
            >
              {said}
            </text>
          </g>
        ))}
        <path d={path ?? undefined} fill="none" strokeWidth={1} className="stroke-act" />
      </g>
      {children}
    </>
  );
}
