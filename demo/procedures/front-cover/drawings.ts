import type { Drawing } from '@/lib/procedure';
import type { Point } from '../pen';
import {
  arc,
  belt,
  circle,
  flange,
  hexagon,
  inset,
  line,
  onCircle,
  polygon,
  ring,
  roundedBox,
  shape,
} from '../pen';
import { holes } from '../write';

const crank: Point = { x: 150, y: 262 };
const pumpSeat: Point = { x: 116, y: 114 };
const pumpDrive: Point = { x: 212, y: 128 };

const edge1: Point = { x: 62, y: 50 };
const edge4: Point = { x: 264, y: 92 };
const edge5: Point = { x: 266, y: 164 };
const edge7: Point = { x: 226, y: 300 };
const edge8: Point = { x: 160, y: 346 };
const edge9: Point = { x: 84, y: 320 };

/** Clockwise from the top left; the twelfth hole lies inside. */
const edge: readonly Point[] = [
  edge1,
  { x: 138, y: 28 },
  { x: 214, y: 40 },
  edge4,
  edge5,
  { x: 236, y: 232 },
  edge7,
  edge8,
  edge9,
  { x: 54, y: 240 },
  { x: 36, y: 146 },
];
const inside: Point = { x: 156, y: 196 };

const cover: Drawing = {
  id: 'cover',
  title: 'Front cover, seen from the front',
  description:
    'An irregular cover, wider at the top. Eleven bolt holes run clockwise round the edge from the top left; the twelfth lies inside, above the crankshaft seal. The coolant pump seat is at the upper left, the injection pump drive at the upper right, the seal bore at the bottom.',
  widthMm: 300,
  heightMm: 380,
  shapes: [
    shape('outline', flange(edge, 13, 6)),
    shape('outline', circle(crank.x, crank.y, 31)),
    shape('outline', circle(pumpSeat.x, pumpSeat.y, 39)),
    shape('outline', circle(inside.x, inside.y, 13)),
    shape(
      'detail',
      circle(crank.x, crank.y, 24),
      circle(pumpSeat.x, pumpSeat.y, 30),
      circle(pumpDrive.x, pumpDrive.y, 36),
      circle(pumpDrive.x, pumpDrive.y, 28),
      ...ring(pumpDrive, 32, 4, 45).map((screw) => circle(screw.x, screw.y, 2.2)),
    ),
    // Ribs between the bosses of a die casting.
    shape(
      'detail',
      line(onCircle(inside, 13, 205), onCircle(crank, 31, 350)),
      line(onCircle(inside, 13, 155), onCircle(crank, 31, 15)),
      line(onCircle(inside, 13, 310), onCircle(pumpSeat, 39, 150)),
      line(onCircle(inside, 13, 50), onCircle(pumpDrive, 36, 215)),
      line(onCircle(edge9, 13, 40), onCircle(crank, 31, 230)),
      line(onCircle(edge8, 13, 0), onCircle(crank, 31, 175)),
      line(onCircle(edge7, 13, 285), onCircle(crank, 31, 120)),
      line(onCircle(edge1, 13, 140), onCircle(pumpSeat, 39, 322)),
      line(onCircle(edge4, 13, 235), onCircle(pumpDrive, 36, 55)),
      line(onCircle(edge5, 13, 300), onCircle(pumpDrive, 36, 122)),
    ),
    // The face that the gasket lies on.
    shape('hidden', polygon(...inset(edge, 14))),
    shape('hidden', circle(50, 193, 4), circle(231, 266, 4)),
  ],
  marks: [
    { text: 'coolant pump', xMm: pumpSeat.x, yMm: pumpSeat.y },
    { text: 'pump drive', xMm: pumpDrive.x, yMm: pumpDrive.y },
    { text: 'seal', xMm: crank.x, yMm: crank.y },
  ],
  holes: holes('cover', 9, [...edge, inside]),
};

const pumpHoles: readonly Point[] = [
  { x: 58, y: 30 },
  { x: 124, y: 34 },
  { x: 146, y: 96 },
  { x: 92, y: 138 },
  { x: 32, y: 92 },
];
const shaft: Point = { x: 92, y: 82 };

const pump: Drawing = {
  id: 'pump',
  title: 'Coolant pump, seen from the front',
  description:
    'A five-sided pump flange with one bolt at each corner, numbered clockwise from the upper left. The shaft is in the middle and the hose neck points to the right.',
  widthMm: 220,
  heightMm: 170,
  shapes: [
    shape('outline', flange(pumpHoles, 12, 5)),
    shape('outline', circle(shaft.x, shaft.y, 34)),
    shape(
      'outline',
      line({ x: 132, y: 50 }, { x: 190, y: 50 }),
      line({ x: 141, y: 76 }, { x: 190, y: 76 }),
      roundedBox(190, 47, 9, 32, 3),
    ),
    shape('detail', circle(shaft.x, shaft.y, 22), circle(shaft.x, shaft.y, 8)),
    shape('detail', ...ring(shaft, 15, 4, 45).map((hole) => circle(hole.x, hole.y, 2.6))),
    shape('hidden', circle(shaft.x, shaft.y, 40)),
  ],
  marks: [{ text: 'hose', xMm: 166, yMm: 63 }],
  holes: holes('pump', 6.6, pumpHoles),
};

const pulley = { x: 120, y: 236, r: 70 };
const pumpPulley = { x: 84, y: 84, r: 40 };
const tensioner = { x: 208, y: 128, r: 25 };

const drive: Drawing = {
  id: 'drive',
  title: 'Belt drive, seen from the front',
  description:
    'The crankshaft pulley at the bottom with its bolt, locking plate and timing notch; the coolant pump pulley at the upper left; the tensioner with its nut at the right. One belt runs round all three.',
  widthMm: 260,
  heightMm: 336,
  shapes: [
    shape('outline', belt([pumpPulley, tensioner, pulley])),
    shape(
      'outline',
      circle(pulley.x, pulley.y, 66),
      circle(pumpPulley.x, pumpPulley.y, 36),
      circle(tensioner.x, tensioner.y, 21),
    ),
    shape('detail', circle(pulley.x, pulley.y, 58), circle(pulley.x, pulley.y, 34)),
    shape('detail', ...ring(pulley, 46, 5).map((hole) => circle(hole.x, hole.y, 7))),
    shape('detail', circle(pumpPulley.x, pumpPulley.y, 14), circle(pumpPulley.x, pumpPulley.y, 6)),
    // Locking plate with its two tabs, under the bolt head.
    shape(
      'detail',
      polygon(
        { x: 104, y: 222 },
        { x: 112, y: 214 },
        { x: 128, y: 214 },
        { x: 136, y: 222 },
        { x: 136, y: 250 },
        { x: 128, y: 258 },
        { x: 112, y: 258 },
        { x: 104, y: 250 },
      ),
    ),
    shape('detail', hexagon(pulley, 22), hexagon(tensioner, 17)),
    // Timing notch in the rim and its pointer on the cover.
    shape('outline', polygon({ x: 145, y: 154 }, { x: 155, y: 154 }, onCircle(pulley, 67, 24))),
    shape('detail', line(onCircle(pulley, 58, 24), onCircle(pulley, 66, 24))),
    shape('detail', arc(pulley, 86, 128, 168)),
    shape('detail', line({ x: 146, y: 313 }, onCircle(pulley, 86, 168), { x: 147, y: 326 })),
  ],
  marks: [
    { text: 'timing mark', xMm: 150, yMm: 146 },
    { text: 'turn this way', xMm: 208, yMm: 304 },
    { text: 'pump', xMm: pumpPulley.x, yMm: 24 },
  ],
  holes: [
    { id: 'crank-1', xMm: pulley.x, yMm: pulley.y, diameterMm: 14 },
    { id: 'tensioner-1', xMm: tensioner.x, yMm: tensioner.y, diameterMm: 10 },
  ],
};

const plugs: Drawing = {
  id: 'plugs',
  title: 'Engine from below',
  description:
    'The sump seen from below with the oil drain plug at its rear edge, and the coolant drain plug in the side of the block at the right.',
  widthMm: 320,
  heightMm: 240,
  shapes: [
    shape('outline', roundedBox(26, 40, 222, 164, 14)),
    shape('detail', roundedBox(44, 58, 186, 128, 20)),
    shape(
      'detail',
      ...[60, 104, 148, 192, 214].flatMap((x) => [circle(x, 49, 3), circle(x, 195, 3)]),
    ),
    shape('outline', circle(66, 152, 16)),
    shape(
      'outline',
      line({ x: 248, y: 62 }, { x: 296, y: 62 }, { x: 296, y: 184 }, { x: 248, y: 184 }),
    ),
    shape('outline', circle(274, 124, 13)),
    shape(
      'detail',
      line({ x: 110, y: 76 }, { x: 110, y: 168 }),
      line({ x: 160, y: 76 }, { x: 160, y: 168 }),
    ),
  ],
  marks: [
    { text: 'oil', xMm: 66, yMm: 124 },
    { text: 'coolant', xMm: 272, yMm: 98 },
    { text: 'front', xMm: 137, yMm: 22 },
  ],
  holes: [
    { id: 'sump-1', xMm: 66, yMm: 152, diameterMm: 14 },
    { id: 'coolant-1', xMm: 274, yMm: 124, diameterMm: 10 },
  ],
};

export const frontCoverDrawings: Drawing[] = [cover, pump, drive, plugs];
