/** A hole of a joint on its drawing, mm. Only where it lies matters for the order. */
export interface HolePoint {
  readonly id: string;
  readonly xMm: number;
  readonly yMm: number;
}

/** A point about the joint's centre, in units of the joint's own size; free of where and how large it was drawn. */
export interface JointPoint {
  readonly id: string;
  readonly x: number;
  readonly y: number;
}

const natural = new Intl.Collator('en', { numeric: true });

/** Ids as people count: `bolt-2` before `bolt-10`. */
export const byId = (a: { readonly id: string }, b: { readonly id: string }): number =>
  natural.compare(a.id, b.id) || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value / values.length, 0);

export const distance = (a: JointPoint, b: JointPoint): number => Math.hypot(a.x - b.x, a.y - b.y);

/**
 * The holes about their centroid, scaled to a root-mean-square radius of 1, sorted by id.
 * `undefined` where they have no extent: no holes, all in one place, or coordinates that are not finite.
 */
export const aboutCentre = (holes: readonly HolePoint[]): readonly JointPoint[] | undefined => {
  const largest = Math.max(...holes.flatMap(({ xMm, yMm }) => [Math.abs(xMm), Math.abs(yMm)]));
  if (!Number.isFinite(largest) || largest === 0) return undefined;
  // Sorted first: a sum of floats depends on its order, and the answer must not.
  const sorted = [...holes].sort(byId);
  const scaled = sorted.map(({ id, xMm, yMm }) => ({ id, x: xMm / largest, y: yMm / largest }));
  const centre = { x: mean(scaled.map(({ x }) => x)), y: mean(scaled.map(({ y }) => y)) };
  const moved = scaled.map(({ id, x, y }) => ({ id, x: x - centre.x, y: y - centre.y }));
  const size = Math.sqrt(mean(moved.map(({ x, y }) => x * x + y * y)));
  if (!(size > 1e-9)) return undefined;
  return moved.map(({ id, x, y }) => ({ id, x: x / size, y: y / size }));
};
