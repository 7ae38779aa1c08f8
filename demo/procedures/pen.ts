import type { Drawing } from '@/lib/procedure';

/** A point of a drawing, mm; y grows downwards. */
export interface Point {
  readonly x: number;
  readonly y: number;
}
export interface Disc extends Point {
  readonly r: number;
}
type Shape = Drawing['shapes'][number];
type Weight = Shape['weight'];

const mm = (value: number): string => String(Math.round(value * 10) / 10);
const at = (point: Point): string => `${mm(point.x)} ${mm(point.y)}`;

export const shape = (weight: Weight, ...paths: readonly string[]): Shape => ({
  path: paths.join(' '),
  weight,
});

export const circle = (x: number, y: number, r: number): string =>
  `M ${at({ x: x - r, y })} A ${mm(r)} ${mm(r)} 0 1 1 ${at({ x: x + r, y })} A ${mm(r)} ${mm(r)} 0 1 1 ${at({ x: x - r, y })} Z`;

export const line = (...points: readonly Point[]): string =>
  points.map((point, index) => `${index === 0 ? 'M' : 'L'} ${at(point)}`).join(' ');

export const polygon = (...points: readonly Point[]): string => `${line(...points)} Z`;

/** The point at `degrees` on a circle, 0° at the top, clockwise. */
export const onCircle = (centre: Point, r: number, degrees: number): Point => {
  const angle = (degrees * Math.PI) / 180;
  return { x: centre.x + r * Math.sin(angle), y: centre.y - r * Math.cos(angle) };
};

export const ring = (centre: Point, r: number, count: number, firstDegrees = 0): Point[] =>
  Array.from({ length: count }, (_, index) =>
    onCircle(centre, r, firstDegrees + (index * 360) / count),
  );

export const hexagon = (centre: Point, acrossFlats: number): string =>
  polygon(...ring(centre, acrossFlats / Math.sqrt(3), 6, 30));

/** An arc on a circle from one angle to the next, clockwise, less than a full turn. */
export const arc = (centre: Point, r: number, from: number, to: number): string =>
  `M ${at(onCircle(centre, r, from))} A ${mm(r)} ${mm(r)} 0 ${to - from > 180 ? 1 : 0} 1 ${at(onCircle(centre, r, to))}`;

export const roundedBox = (
  x: number,
  y: number,
  width: number,
  height: number,
  r: number,
): string =>
  [
    `M ${at({ x: x + r, y })}`,
    `H ${mm(x + width - r)}`,
    `A ${mm(r)} ${mm(r)} 0 0 1 ${at({ x: x + width, y: y + r })}`,
    `V ${mm(y + height - r)}`,
    `A ${mm(r)} ${mm(r)} 0 0 1 ${at({ x: x + width - r, y: y + height })}`,
    `H ${mm(x + r)}`,
    `A ${mm(r)} ${mm(r)} 0 0 1 ${at({ x, y: y + height - r })}`,
    `V ${mm(y + r)}`,
    `A ${mm(r)} ${mm(r)} 0 0 1 ${at({ x: x + r, y })}`,
    'Z',
  ].join(' ');

const unit = (from: Point, to: Point): Point => {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  return { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
};

/**
 * The outline of a bolted flange: round bosses about the holes, joined by edges `inset` outside the line of centres.
 * Holes in clockwise order as seen on the drawing; the feet of the bosses are rounded like a casting's.
 */
export const flange = (holes: readonly Point[], bossR: number, inset: number): string => {
  const reach = Math.sqrt(bossR * bossR - inset * inset);
  const foot = bossR * 0.45;
  const parts = holes.map((hole, index) => {
    const before = holes.at(index - 1) ?? hole;
    const next = holes[(index + 1) % holes.length] ?? hole;
    const incoming = unit(before, hole);
    const outgoing = unit(hole, next);
    const along = (way: Point, distance: number): Point => ({
      x: hole.x + way.x * distance + way.y * inset,
      y: hole.y + way.y * distance - way.x * inset,
    });
    const turn = Math.asin(foot / bossR);
    const onBoss = (way: Point, distance: number, by: number): Point => {
      const touch = along(way, distance);
      const [dx, dy] = [touch.x - hole.x, touch.y - hole.y];
      return {
        x: hole.x + dx * Math.cos(by) - dy * Math.sin(by),
        y: hole.y + dx * Math.sin(by) + dy * Math.cos(by),
      };
    };
    return [
      `${index === 0 ? 'M' : 'L'} ${at(along(incoming, -reach - foot))}`,
      `Q ${at(along(incoming, -reach))} ${at(onBoss(incoming, -reach, turn))}`,
      `A ${mm(bossR)} ${mm(bossR)} 0 0 1 ${at(onBoss(outgoing, reach, -turn))}`,
      `Q ${at(along(outgoing, reach))} ${at(along(outgoing, reach + foot))}`,
    ].join(' ');
  });
  return `${parts.join(' ')} Z`;
};

/** A polygon whose corners are rounded from `cut` before to `cut` behind each. */
export const rounded = (corners: readonly Point[], cut: number): string => {
  const parts = corners.map((corner, index) => {
    const before = unit(corner, corners.at(index - 1) ?? corner);
    const next = unit(corner, corners[(index + 1) % corners.length] ?? corner);
    const move = (way: Point): Point => ({ x: corner.x + way.x * cut, y: corner.y + way.y * cut });
    return `${index === 0 ? 'M' : 'L'} ${at(move(before))} Q ${at(corner)} ${at(move(next))}`;
  });
  return `${parts.join(' ')} Z`;
};

/** The same polygon (clockwise as seen) with every edge moved inwards. */
export const inset = (corners: readonly Point[], distance: number): Point[] =>
  corners.map((corner, index) => {
    const before = unit(corners.at(index - 1) ?? corner, corner);
    const next = unit(corner, corners[(index + 1) % corners.length] ?? corner);
    const [nx, ny] = [-before.y - next.y, before.x + next.x];
    const scale = distance / (1 + before.x * next.x + before.y * next.y);
    return { x: corner.x + nx * scale, y: corner.y + ny * scale };
  });

/** A belt round pulleys that all turn the same way, given clockwise as seen on the drawing. */
export const belt = (pulleys: readonly Disc[]): string => {
  const tangent = (a: Disc, b: Disc): readonly [Point, Point] => {
    const way = unit(a, b);
    const lean = (a.r - b.r) / Math.hypot(b.x - a.x, b.y - a.y);
    const side = Math.sqrt(1 - lean * lean);
    const normal = { x: way.x * lean + way.y * side, y: way.y * lean - way.x * side };
    const touch = (disc: Disc): Point => ({
      x: disc.x + normal.x * disc.r,
      y: disc.y + normal.y * disc.r,
    });
    return [touch(a), touch(b)];
  };
  const parts = pulleys.map((pulley, index) => {
    const before = pulleys.at(index - 1) ?? pulley;
    const next = pulleys[(index + 1) % pulleys.length] ?? pulley;
    const [, arrives] = tangent(before, pulley);
    const [leaves] = tangent(pulley, next);
    const cross =
      (arrives.x - pulley.x) * (leaves.y - pulley.y) -
      (arrives.y - pulley.y) * (leaves.x - pulley.x);
    return `${index === 0 ? 'M' : 'L'} ${at(arrives)} A ${mm(pulley.r)} ${mm(pulley.r)} 0 ${cross < 0 ? 1 : 0} 1 ${at(leaves)}`;
  });
  return `${parts.join(' ')} Z`;
};
