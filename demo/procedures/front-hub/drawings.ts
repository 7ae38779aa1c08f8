import type { Drawing } from '@/lib/procedure';
import type { Point } from '../pen';
import { arc, circle, hexagon, line, onCircle, ring, rounded, roundedBox, shape } from '../pen';
import { holes } from '../write';

const axle: Point = { x: 170, y: 170 };
const studs = ring(axle, 57, 5);

/** Points on a circle about the axle. */
const sweep = (r: number, degrees: readonly number[]): Point[] =>
  degrees.map((angle) => onCircle(axle, r, angle));

/** An opening between two spokes. */
const opening = (middle: number): string =>
  rounded(
    [
      ...sweep(
        88,
        [-14, 0, 14].map((angle) => middle + angle),
      ),
      ...sweep(
        115,
        [22, 14, 5, -5, -14, -22].map((angle) => middle + angle),
      ),
    ],
    5,
  );

const wheel: Drawing = {
  id: 'wheel',
  title: 'Front wheel, seen from outside',
  description:
    'A wheel with five nuts on a bolt circle of 114 mm round the hub. Nut 1 is at the top when the valve points down; they are numbered clockwise.',
  widthMm: 340,
  heightMm: 340,
  shapes: [
    shape('outline', circle(axle.x, axle.y, 160), circle(axle.x, axle.y, 128)),
    shape('outline', circle(axle.x, axle.y, 30)),
    shape('detail', circle(axle.x, axle.y, 122), circle(axle.x, axle.y, 76)),
    shape('detail', ...[36, 108, 252, 324].map(opening), opening(180)),
    shape('detail', circle(axle.x, axle.y, 24)),
    shape('hidden', circle(axle.x, axle.y, 57)),
    shape('detail', roundedBox(166, 288, 8, 18, 3)),
  ],
  marks: [{ text: 'valve', xMm: 196, yMm: 306 }],
  holes: holes('wheel', 13, studs),
};

const calliperLugs: readonly Point[] = [onCircle(axle, 112, 52), onCircle(axle, 112, 128)];
const bleed: Point = onCircle(axle, 145, 54);
const sensor: Point = onCircle(axle, 96, 236);

const brake: Drawing = {
  id: 'brake',
  title: 'Front brake and hub, wheel off',
  description:
    'The brake disc with the hub and its centre nut. The calliper straddles the disc at the right, held by an upper and a lower bolt, its bleed screw at the top. The wheel speed sensor sits at the lower left behind the disc.',
  widthMm: 350,
  heightMm: 330,
  shapes: [
    // The disc's rim and face, broken where the calliper lies over them.
    shape('outline', arc(axle, 140, 134.5, 405.5)),
    shape('detail', circle(axle.x, axle.y, 84)),
    shape('detail', arc(axle, 134, 134.7, 405.3)),
    shape('outline', circle(axle.x, axle.y, 78)),
    shape(
      'outline',
      rounded(
        [
          ...sweep(156, [46, 54, 62, 70, 78, 86, 94, 102, 110, 118, 126, 134]),
          ...sweep(96, [136, 125, 113, 102, 90, 78, 67, 55, 44]),
        ],
        7,
      ),
    ),
    shape(
      'detail',
      rounded(
        [
          ...sweep(146, [68, 75, 83, 90, 97, 105, 112]),
          ...sweep(108, [112, 104, 97, 90, 83, 76, 68]),
        ],
        6,
      ),
    ),
    shape('detail', ...calliperLugs.map((lug) => hexagon(lug, 18))),
    shape('detail', hexagon(bleed, 10)),
    shape('detail', ...studs.map((stud) => circle(stud.x, stud.y, 6))),
    shape('outline', hexagon(axle, 30), circle(axle.x, axle.y, 27)),
    shape('hidden', circle(sensor.x, sensor.y, 12)),
    shape(
      'hidden',
      line(onCircle(axle, 108, 236), onCircle(axle, 150, 236), onCircle(axle, 168, 222)),
    ),
  ],
  marks: [
    { text: 'calliper', xMm: 296, yMm: 170 },
    { text: 'bleed', xMm: 316, yMm: 66 },
    { text: 'sensor', xMm: 40, yMm: 304 },
  ],
  holes: [
    { id: 'hub-1', xMm: axle.x, yMm: axle.y, diameterMm: 20 },
    ...holes('calliper', 12, calliperLugs),
    ...holes('bleed', 8, [bleed]),
    ...holes('sensor', 6.6, [sensor]),
  ],
};

export const frontHubDrawings: Drawing[] = [wheel, brake];
