import { byId, distance, type JointPoint } from './hole';
import { neighbours } from './neighbours';

/** How much the way out from the centre counts beside the balance of what is tight. */
const INSIDE_OUT = 0.5;
/** Scores nearer than this are equal: the choice then falls to the farther hole and the lower id, not to rounding. */
const EQUAL = 1e-6;

/**
 * The order on a rectangular or irregular cover: from the inside out, each hole where it best balances those
 * already tight, and never two neighbours in a row where any order avoids it.
 *
 * The balance is the pull of the tightened set away from the joint's centre. Where the best next hole leads into
 * a dead end the search steps back, so an order without neighbours in a row is found whenever there is one;
 * where there is none, as few as can be. Common practice, no source.
 */
export const coverOrder = (points: readonly JointPoint[]): readonly JointPoint[] => {
  const { places, repeats } = distinct(points);
  const beside = neighbours(places);
  for (let allowed = 0; allowed < places.length; allowed += 1) {
    const order = search(places, beside, allowed);
    if (order !== undefined) return [...order.flatMap((index) => places[index] ?? []), ...repeats];
  }
  return points;
};

/** Holes drawn on one spot are a fault of the drawing: one of them takes part, the others come last. */
const distinct = (points: readonly JointPoint[]) => {
  const places: JointPoint[] = [];
  const repeats: JointPoint[] = [];
  for (const point of [...points].sort(byId)) {
    const taken = places.some((place) => distance(place, point) < EQUAL);
    (taken ? repeats : places).push(point);
  }
  return { places, repeats };
};

interface Tight {
  readonly order: readonly number[];
  readonly left: readonly number[];
  /** Sum of the tightened points about the joint's centre. */
  readonly x: number;
  readonly y: number;
}

/** Depth first, best hole first, at most `allowed` neighbours in a row; each dead end is entered once. */
const search = (
  points: readonly JointPoint[],
  beside: readonly ReadonlySet<number>[],
  allowed: number,
): readonly number[] | undefined => {
  const deadEnds = new Set<string>();
  const finish = (tight: Tight, spare: number): readonly number[] | undefined => {
    if (tight.left.length === 0) return tight.order;
    const last = tight.order.at(-1);
    const place = `${String(last)}:${String(spare)}:${tight.left.join()}`;
    if (deadEnds.has(place)) return undefined;
    for (const index of bestFirst(points, tight)) {
      const point = points[index];
      const costs = last !== undefined && beside[last]?.has(index) === true ? 1 : 0;
      if (point === undefined || costs > spare) continue;
      const next = {
        order: [...tight.order, index],
        left: tight.left.filter((other) => other !== index),
        x: tight.x + point.x,
        y: tight.y + point.y,
      };
      const order = finish(next, spare - costs);
      if (order !== undefined) return order;
    }
    deadEnds.add(place);
    return undefined;
  };
  return finish({ order: [], left: points.map((_, index) => index), x: 0, y: 0 }, allowed);
};

/** The holes left, best next one first. */
const bestFirst = (points: readonly JointPoint[], tight: Tight): readonly number[] => {
  const last = points[tight.order.at(-1) ?? -1];
  return tight.left
    .flatMap((index) => {
      const point = points[index];
      if (point === undefined) return [];
      const pull = Math.hypot(tight.x + point.x, tight.y + point.y);
      const out = Math.hypot(point.x, point.y);
      const leap = last === undefined ? 0 : distance(last, point);
      return [{ index, point, score: pull + INSIDE_OUT * out, leap }];
    })
    .sort((a, b) => compare(a.score, b.score) || compare(b.leap, a.leap) || byId(a.point, b.point))
    .map(({ index }) => index);
};

/** Rounded to a grid, so that it stays a proper ordering. */
const compare = (a: number, b: number): number => Math.round(a / EQUAL) - Math.round(b / EQUAL);
