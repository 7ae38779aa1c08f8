import type { Drawing } from '@/lib/procedure';
import { FastenerMark, markWords, ordinalText, type FastenerMarkData } from './fastener-mark';

const weights = {
  outline: { className: 'stroke-ink', width: 1 },
  detail: { className: 'stroke-quiet', width: 0.55 },
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
  return Math.min(Math.max(widthMm, heightMm) * 0.06, 0.4 * Math.min(...gaps, Infinity));
};

const markText = (mark: FastenerMarkData): string =>
  [
    mark.label,
    mark.ordinal === undefined ? '' : `${ordinalText(mark.ordinal)} to tighten`,
    mark.lengthMm === undefined ? '' : `${mark.lengthMm} mm long`,
    markWords[mark.state],
  ]
    .filter((part) => part !== '')
    .join(', ');

/** The joint as drawn by the maker's sheet: holes, bolt lengths, the order, which one is now and which are done. */
export function DrawingView({
  drawing,
  marks,
}: {
  readonly drawing: Drawing;
  readonly marks: readonly FastenerMarkData[];
}) {
  const holeOf = (mark: FastenerMarkData) => drawing.holes.find(({ id }) => id === mark.hole);
  const size = markSize(
    drawing,
    marks.map(({ hole }) => hole),
  );
  const unit = Math.max(drawing.widthMm, drawing.heightMm) / 200;
  const room = size * 2.2;
  const lengths = new Set(marks.map(({ lengthMm }) => lengthMm));
  const small = { fontSize: size * 0.82, textAnchor: 'middle' } as const;
  return (
    <figure className="flex min-h-0 grow flex-col">
      <svg
        viewBox={`${-room} ${-room} ${drawing.widthMm + 2 * room} ${drawing.heightMm + 2 * room}`}
        role="img"
        aria-label={`${drawing.title}. ${drawing.description}`}
        className="min-h-0 w-full grow"
      >
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
            strokeWidth={unit * 0.6}
          />
        ))}
        {drawing.marks.map(({ text, xMm, yMm }) => (
          <text
            key={text}
            x={xMm}
            y={yMm}
            fontSize={size * 0.8}
            textAnchor="middle"
            className="fill-ink"
          >
            {text}
          </text>
        ))}
        {marks.map((mark) => {
          const hole = holeOf(mark);
          if (hole === undefined) return null;
          const { xMm: x, yMm: y } = hole;
          return (
            <g key={mark.fastener}>
              <FastenerMark mark={mark} x={x} y={y} size={size} />
              {mark.ordinal === undefined ? null : (
                <text {...small} x={x} y={y - size * 1.35} className="fill-act font-bold">
                  {ordinalText(mark.ordinal)}
                </text>
              )}
              {mark.lengthMm === undefined || lengths.size < 2 ? null : (
                <text {...small} x={x} y={y + size * 1.95} className="fill-ink">
                  {mark.lengthMm} mm
                </text>
              )}
            </g>
          );
        })}
      </svg>
      <figcaption className="text-body text-quiet">
        {drawing.title}
        <ul className="sr-only">
          {marks.map((mark) => (
            <li key={mark.fastener}>{markText(mark)}</li>
          ))}
        </ul>
      </figcaption>
    </figure>
  );
}
