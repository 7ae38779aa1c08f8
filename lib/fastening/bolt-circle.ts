import { byId, type JointPoint } from './hole';

/** How far a hole may lie off the fitted circle, of its radius. */
const RADIUS_TOLERANCE = 0.02;
/** How far a gap between two holes may differ from an even share of the circle. */
const GAP_TOLERANCE = 0.25;

/**
 * The crossing order of `count` evenly spaced bolts, as positions 0 … count − 1 round the circle.
 *
 * Even: each bolt is followed by its opposite, the pairs in the crossing order of half the circle. Odd: the star,
 * each time as near to opposite as there is. Source: reproduces the cross patterns of ASME PCC-1 for 4, 8, 12,
 * 16, 20, 24 and 32 bolts (tables from memory); other counts are the same rule, and not from the standard.
 */
export const crossingPattern = (count: number): readonly number[] => {
  if (!(count >= 1)) return [];
  if (count === 1) return [0];
  if (count % 2 === 0) {
    const half = count / 2;
    return crossingPattern(half).flatMap((start) => [start, start + half]);
  }
  const step = (count - 1) / 2; // has no divisor in common with count
  return Array.from({ length: count }, (_, k) => (k * step) % count);
};

interface Circle {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** Least squares circle through points that are centred on their mean (Kåsa's linear form). */
const fitCircle = (points: readonly JointPoint[]): Circle | undefined => {
  const sum = (of: (point: JointPoint) => number): number =>
    points.reduce((total, point) => total + of(point), 0);
  const xx = sum(({ x }) => x * x);
  const xy = sum(({ x, y }) => x * y);
  const yy = sum(({ y }) => y * y);
  const determinant = xx * yy - xy * xy;
  if (determinant < 1e-9 * (xx + yy) ** 2) return undefined; // in one line
  const alongX = sum(({ x, y }) => x * (x * x + y * y)) / 2;
  const alongY = sum(({ x, y }) => y * (x * x + y * y)) / 2;
  const x = (alongX * yy - alongY * xy) / determinant;
  const y = (alongY * xx - alongX * xy) / determinant;
  return { x, y, radius: Math.sqrt(x * x + y * y + (xx + yy) / points.length) };
};

/**
 * The holes in turn round their bolt circle, counted from the lowest id towards the lower of its two neighbours;
 * `undefined` where they are not on a circle or not roughly evenly spaced (each gap within a quarter of an even share).
 */
export const roundBoltCircle = (
  points: readonly JointPoint[],
): readonly JointPoint[] | undefined => {
  if (points.length < 4) return undefined; // any three lie on a circle
  const circle = fitCircle(points);
  if (circle === undefined) return undefined;
  const onCircle = points.every(
    ({ x, y }) =>
      Math.abs(Math.hypot(x - circle.x, y - circle.y) - circle.radius) <=
      RADIUS_TOLERANCE * circle.radius,
  );
  if (!onCircle) return undefined;

  const turned = points
    .map((point) => ({ point, angle: Math.atan2(point.y - circle.y, point.x - circle.x) }))
    .sort((a, b) => a.angle - b.angle);
  const even = (2 * Math.PI) / points.length;
  const gaps = turned.map(({ angle }, k) => {
    const next = turned[k + 1]?.angle ?? (turned[0]?.angle ?? 0) + 2 * Math.PI;
    return next - angle;
  });
  if (!gaps.every((gap) => Math.abs(gap - even) <= GAP_TOLERANCE * even)) return undefined;

  return fromLowest(turned.map(({ point }) => point));
};

/** A ring turned to start at its lowest id, and run towards the lower of the two beside it. */
const fromLowest = (ring: readonly JointPoint[]): readonly JointPoint[] => {
  const lowest = [...ring].sort(byId)[0];
  const start = ring.findIndex((point) => point === lowest);
  const forward = [...ring.slice(start), ...ring.slice(0, start)];
  const [first, next, ...rest] = forward;
  const last = rest.at(-1);
  if (first === undefined || next === undefined || last === undefined) return forward;
  return byId(next, last) < 0 ? forward : [first, ...forward.slice(1).reverse()];
};
