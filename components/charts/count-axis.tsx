import { countTicks } from './axis-ticks';

/** Where the rows begin, and counts in round numbers under them. */
export function CountAxis({
  x,
  most,
  top,
  bottom,
}: {
  readonly x: (count: number) => number;
  readonly most: number;
  readonly top: number;
  readonly bottom: number;
}) {
  return (
    <g aria-hidden="true" className="fill-quiet" textAnchor="middle">
      {countTicks(most, 5).map((tick) => (
        <g key={tick}>
          <line
            x1={x(tick)}
            x2={x(tick)}
            y1={top}
            y2={bottom}
            className={tick === 0 ? 'stroke-edge' : 'stroke-line'}
          />
          <text x={x(tick)} y={bottom + 15}>
            {tick}
          </text>
        </g>
      ))}
    </g>
  );
}
