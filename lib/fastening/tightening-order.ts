import { crossingPattern, roundBoltCircle } from './bolt-circle';
import { coverOrder } from './cover-order';
import { aboutCentre, byId, type HolePoint } from './hole';

/**
 * The order in which to tighten the holes of one joint: every id once.
 *
 * On a bolt circle the crossing pattern (ASME PCC-1), on any other layout from the inside out with opposite sides
 * in turn. Depends on where the holes lie about each other alone: the same wherever, however large and whichever
 * way up they are drawn and listed; ties go to the lower id. Holes without extent are ordered by id. Never throws.
 */
export const tighteningOrder = (holes: readonly HolePoint[]): readonly string[] => {
  const points = aboutCentre(holes);
  if (points === undefined) return [...holes].sort(byId).map(({ id }) => id);
  const ring = roundBoltCircle(points);
  const order = ring
    ? crossingPattern(ring.length).flatMap((position) => ring[position] ?? [])
    : coverOrder(points);
  return order.map(({ id }) => id);
};

/** The holes once round the joint, as the check round takes them: by angle about the centre, from the lowest id. */
export const roundOrder = (holes: readonly HolePoint[]): readonly string[] => {
  const sorted = [...holes].sort(byId);
  const points = aboutCentre(holes);
  if (points === undefined) return sorted.map(({ id }) => id);
  const turned = points
    .map((point) => ({ ...point, angle: Math.atan2(point.y, point.x) }))
    .sort((a, b) => a.angle - b.angle || byId(a, b))
    .map(({ id }) => id);
  const start = turned.indexOf(sorted[0]?.id ?? '');
  return [...turned.slice(start), ...turned.slice(0, start)];
};

/**
 * How far the tightened set pulls to one side while an order is followed: the mean, over the bolts as they come
 * tight, of the distance between the centroid of the tight ones and the joint's centre, in units of the joint's
 * root-mean-square radius. 0 is perfect balance. Ids that are no holes are passed over; 0 for holes without extent.
 */
export const imbalance = (holes: readonly HolePoint[], order: readonly string[]): number => {
  const points = new Map(aboutCentre(holes)?.map((point) => [point.id, point]));
  let [x, y, tight, total] = [0, 0, 0, 0];
  for (const id of order) {
    const point = points.get(id);
    if (point === undefined) continue;
    [x, y, tight] = [x + point.x, y + point.y, tight + 1];
    total += Math.hypot(x, y) / tight;
  }
  return tight === 0 ? 0 : total / tight;
};
