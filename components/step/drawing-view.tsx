import type { Drawing } from '@/lib/procedure';
import { FastenerButton, ordinalText, type FastenerMarkData } from './fastener-mark';

const weights = {
  outline: { className: 'stroke-ink', width: 1 },
  detail: { className: 'stroke-quiet', width: 0.5 },
  hidden: { className: 'stroke-quiet', width: 0.45 },
} as const;

/** Marks as large as their holes' spacing allows, so that labels are read from the vehicle and never overlap. */
export const markSize = (
  { widthMm, heightMm, holes }: Drawing,
  marked: readonly string[],
): number => {
  const shown = holes.filter(({ id }) => marked.includes(id));
  const gaps = shown.flatMap((a, index) =>
    shown.slice(index + 1).map((b) => Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm)),
  );
  return Math.min(Math.max(widthMm, heightMm) * 0.06, 0.33 * Math.min(...gaps, Infinity));
};

/** Lines of the drawing do not run through words. */
const halo = (size: number) =>
  ({ paintOrder: 'stroke', strokeWidth: size * 0.3, strokeLinejoin: 'round' }) as const;

function Lines({ drawing, size }: { readonly drawing: Drawing; readonly size: number }) {
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
          fontSize={size * 0.75}
          textAnchor="middle"
          {...halo(size)}
          className="fill-ink stroke-surface"
        >
          {text}
        </text>
      ))}
    </g>
  );
}

/** The joint as drawn by the maker's sheet: holes, bolt lengths, the order, which one is now and which are done. */
export function DrawingView({
  drawing,
  marks,
  onChoose,
}: {
  readonly drawing: Drawing;
  readonly marks: readonly FastenerMarkData[];
  /** Somebody touched a fastener: the next value is of this one. */
  readonly onChoose: (fastener: string) => void;
}) {
  const size = markSize(
    drawing,
    marks.map(({ hole }) => hole),
  );
  const room = marks.length === 0 ? 4 : size * 1.9;
  const lengthsDiffer = new Set(marks.map(({ lengthMm }) => lengthMm)).size > 1;
  const small = { fontSize: size * 0.8, textAnchor: 'middle', ...halo(size) } as const;
  return (
    <figure className="flex min-h-0 grow flex-col">
      <svg
        viewBox={`${-room} ${-room} ${drawing.widthMm + 2 * room} ${drawing.heightMm + 2 * room}`}
        role="group"
        aria-label={`${drawing.title}. ${drawing.description}`}
        className="min-h-0 w-full grow"
      >
        <Lines drawing={drawing} size={size} />
        {marks.map((mark) => {
          const hole = drawing.holes.find(({ id }) => id === mark.hole);
          if (hole === undefined) return null;
          const { xMm: x, yMm: y } = hole;
          const above = mark.ordinal === undefined ? undefined : ordinalText(mark.ordinal);
          const below =
            mark.lengthMm === undefined || !lengthsDiffer ? undefined : `${mark.lengthMm} mm`;
          return (
            <g key={mark.fastener}>
              <FastenerButton
                mark={mark}
                x={x}
                y={y}
                size={size}
                onPress={() => {
                  onChoose(mark.fastener);
                }}
              />
              <g aria-hidden="true" className="pointer-events-none">
                <text
                  {...small}
                  x={x}
                  y={y - size * 1.3}
                  className="fill-act stroke-surface font-bold"
                >
                  {above}
                </text>
                <text {...small} x={x} y={y + size * 1.9} className="fill-ink stroke-surface">
                  {below}
                </text>
              </g>
            </g>
          );
        })}
      </svg>
      <figcaption className="text-body text-quiet">{drawing.title}</figcaption>
    </figure>
  );
}
