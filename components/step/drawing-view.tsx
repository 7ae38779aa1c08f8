import type { Drawing } from '@/lib/procedure';
import { DrawingLines, halo } from './drawing-lines';
import { FastenerButton, ordinalText, type FastenerMarkData } from './fastener-mark';
import { placeLabels, type Place } from './place-labels';

/** Marks as large as their holes' spacing allows, so that labels are read from the vehicle and never overlap. */
export const markSize = (
  { widthMm, heightMm, holes }: Drawing,
  marked: readonly string[],
): number => {
  const shown = holes.filter(({ id }) => marked.includes(id));
  const gaps = shown.flatMap((a, index) =>
    shown.slice(index + 1).map((b) => Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm)),
  );
  return Math.min(Math.max(widthMm, heightMm) * 0.06, 0.36 * Math.min(...gaps, Infinity));
};

/** Place in the order and length: the two things that are not the fastener's own name. */
const wordsOf = (mark: FastenerMarkData, lengthsDiffer: boolean): readonly string[] => [
  ...(mark.ordinal === undefined ? [] : [ordinalText(mark.ordinal)]),
  ...(mark.lengthMm === undefined || !lengthsDiffer ? [] : [`${mark.lengthMm} mm`]),
];

function Words({
  words,
  place,
  size,
}: {
  readonly words: readonly string[];
  readonly place: Place;
  readonly size: number;
}) {
  return words.map((word, index) => (
    <text
      key={word}
      x={place.x}
      y={place.y + (index - (words.length - 1) / 2) * size}
      fontSize={size}
      textAnchor={place.anchor}
      dominantBaseline="central"
      {...halo(size)}
      className={`stroke-surface ${word.endsWith('mm') ? 'fill-ink' : 'fill-act font-bold'}`}
    >
      {word}
    </text>
  ));
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
  const wordSize = size * 0.8;
  const lengthsDiffer = new Set(marks.map(({ lengthMm }) => lengthMm)).size > 1;
  const placed = marks.flatMap((mark) => {
    const hole = drawing.holes.find(({ id }) => id === mark.hole);
    const words = wordsOf(mark, lengthsDiffer);
    const width = Math.max(0, ...words.map((word) => word.length)) * wordSize * 0.58;
    const height = words.length * wordSize;
    return hole === undefined ? [] : [{ mark, words, x: hole.xMm, y: hole.yMm, width, height }];
  });
  const textSize = size * 0.75;
  const drawn = drawing.marks.map(({ text, xMm, yMm }) => {
    const half = (text.length * textSize * 0.55) / 2;
    return { left: xMm - half, top: yMm - textSize, right: xMm + half, bottom: yMm };
  });
  const places = placeLabels(placed, size, drawn);
  const room = marks.length === 0 ? 4 : size * 1.9;
  const side = room + Math.max(0, ...placed.map(({ width }) => width - size * 0.5));
  return (
    <figure className="flex min-h-0 grow flex-col">
      <svg
        viewBox={`${-side} ${-room} ${drawing.widthMm + 2 * side} ${drawing.heightMm + 2 * room}`}
        role="group"
        aria-label={`${drawing.title}. ${drawing.description}`}
        className="min-h-0 w-full grow"
      >
        <DrawingLines drawing={drawing} textSize={textSize} />
        {placed.map(({ mark, x, y }) => (
          <FastenerButton
            key={mark.fastener}
            mark={mark}
            x={x}
            y={y}
            size={size}
            onPress={
              placed.length === 1
                ? undefined
                : () => {
                    onChoose(mark.fastener);
                  }
            }
          />
        ))}
        <g aria-hidden="true" className="pointer-events-none">
          {placed.map(({ mark, words }, index) => {
            const place = places[index];
            return place === undefined ? null : (
              <Words key={mark.fastener} words={words} place={place} size={wordSize} />
            );
          })}
        </g>
      </svg>
      <figcaption className="text-body text-quiet">{drawing.title}</figcaption>
    </figure>
  );
}
