import type { Drawing } from '@/lib/procedure';

const weights = {
  outline: { className: 'stroke-ink', width: 1 },
  detail: { className: 'stroke-quiet', width: 0.5 },
  hidden: { className: 'stroke-quiet', width: 0.45 },
} as const;

/** Lines of the drawing do not run through words. */
export const halo = (textSize: number) =>
  ({ paintOrder: 'stroke', strokeWidth: textSize * 0.35, strokeLinejoin: 'round' }) as const;

/** The drawing itself, without what the step makes of it. Its words are told by its description. */
export function DrawingLines({
  drawing,
  textSize,
}: {
  readonly drawing: Drawing;
  readonly textSize: number;
}) {
  const unit = Math.max(drawing.widthMm, drawing.heightMm) / 200;
  return (
    <g aria-hidden="true">
      {drawing.shapes.map(({ path, weight }) => (
        <path
          key={path}
          d={path}
          fill="none"
          className={weights[weight].className}
          strokeWidth={unit * weights[weight].width}
          strokeDasharray={weight === 'hidden' ? `${unit * 3} ${unit * 2}` : undefined}
          strokeLinejoin="round"
        />
      ))}
      {drawing.holes.map(({ id, xMm, yMm, diameterMm }) => (
        <circle
          key={id}
          cx={xMm}
          cy={yMm}
          r={diameterMm / 2}
          fill="none"
          className="stroke-quiet"
          strokeWidth={unit * 0.5}
        />
      ))}
      {drawing.marks.map(({ text, xMm, yMm }) => (
        <text
          key={text}
          x={xMm}
          y={yMm}
          fontSize={textSize}
          textAnchor="middle"
          {...halo(textSize)}
          className="fill-ink stroke-surface"
        >
          {text}
        </text>
      ))}
    </g>
  );
}
