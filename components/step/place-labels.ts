/** A mark on a drawing, and how large the words beside it are, drawing units. */
export interface Labelled {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Where the words of each mark stand: their middle, and which way they run from the mark. */
export interface Place {
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'middle' | 'end';
}

const overlap = (a: Box, b: Box): number =>
  Math.max(0, Math.min(a.right, b.right) - Math.max(a.left, b.left)) *
  Math.max(0, Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top));

const boxOf = ({ x, y, anchor }: Place, { width, height }: Labelled): Box => {
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return { left, top: y - height / 2, right: left + width, bottom: y + height / 2 };
};

/** Right, left, above and below of a mark, the way that leads outwards first. */
const candidates = (
  { x, y, height }: Labelled,
  radius: number,
  centre: { readonly x: number; readonly y: number },
): readonly Place[] => {
  const gap = radius * 0.25;
  const right: Place = { x: x + radius + gap, y, anchor: 'start' };
  const left: Place = { x: x - radius - gap, y, anchor: 'end' };
  const above: Place = { x, y: y - radius - gap - height / 2, anchor: 'middle' };
  const below: Place = { x, y: y + radius + gap + height / 2, anchor: 'middle' };
  const sides = x >= centre.x ? [right, left] : [left, right];
  const ends = y <= centre.y ? [above, below] : [below, above];
  return Math.abs(x - centre.x) >= Math.abs(y - centre.y)
    ? [...sides, ...ends]
    : [...ends, ...sides];
};

/**
 * Places the words of every mark beside it, outwards where there is room, so that they cover neither another mark nor
 * other words; where nothing is free, where they cover least.
 */
export const placeLabels = (
  marks: readonly Labelled[],
  radius: number,
  /** What else must stay free: the words of the drawing itself. */
  others: readonly Box[] = [],
): readonly Place[] => {
  const middle = (of: (mark: Labelled) => number): number =>
    marks.reduce((sum, mark) => sum + of(mark), 0) / Math.max(1, marks.length);
  const centre = { x: middle(({ x }) => x), y: middle(({ y }) => y) };
  const own = marks.map(({ x, y }) => ({
    left: x - radius,
    top: y - radius,
    right: x + radius,
    bottom: y + radius,
  }));
  const taken: Box[] = [...own, ...others];
  return marks.map((mark) => {
    const covered = (place: Place): number =>
      taken.reduce((sum, box) => sum + overlap(boxOf(place, mark), box), 0);
    const places = candidates(mark, radius, centre);
    const best = places.reduce((a, b) => (covered(b) < covered(a) ? b : a));
    taken.push(boxOf(best, mark));
    return best;
  });
};
