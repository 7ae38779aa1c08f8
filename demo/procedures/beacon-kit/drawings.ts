import type { Drawing } from '@/lib/procedure';
import type { Point } from '../pen';
import { circle, hexagon, line, polygon, ring, rounded, roundedBox, shape } from '../pen';
import { holes } from '../write';

const feet: readonly Point[] = [
  { x: 44, y: 48 },
  { x: 276, y: 48 },
  { x: 276, y: 112 },
  { x: 44, y: 112 },
];
const beaconStuds: readonly Point[] = [
  { x: 130, y: 80 },
  { x: 190, y: 80 },
];

const bracket: Drawing = {
  id: 'bracket',
  title: 'Roof bracket, seen from above',
  description:
    'A cross bar with a foot at each end. Each foot has two bolts: 1 and 4 on the left, 2 and 3 on the right. Two studs for the beacon stand in the middle, 60 mm apart; the lead comes out at the rear.',
  widthMm: 320,
  heightMm: 160,
  shapes: [
    shape('outline', roundedBox(24, 28, 40, 104, 8), roundedBox(256, 28, 40, 104, 8)),
    shape(
      'outline',
      line({ x: 64, y: 64 }, { x: 104, y: 64 }),
      line({ x: 216, y: 64 }, { x: 256, y: 64 }),
      line({ x: 64, y: 96 }, { x: 104, y: 96 }),
      line({ x: 216, y: 96 }, { x: 256, y: 96 }),
      roundedBox(104, 50, 112, 60, 10),
    ),
    shape('detail', circle(160, 80, 40), circle(160, 80, 20)),
    shape(
      'detail',
      line({ x: 64, y: 72 }, { x: 104, y: 72 }),
      line({ x: 64, y: 88 }, { x: 104, y: 88 }),
    ),
    shape(
      'detail',
      line({ x: 216, y: 72 }, { x: 256, y: 72 }),
      line({ x: 216, y: 88 }, { x: 256, y: 88 }),
    ),
    shape('detail', ...feet.map((foot) => circle(foot.x, foot.y, 10))),
    shape('hidden', line({ x: 10, y: 18 }, { x: 310, y: 18 })),
  ],
  marks: [
    { text: 'front of roof', xMm: 160, yMm: 10 },
    { text: 'lead out this side', xMm: 160, yMm: 142 },
  ],
  holes: [...holes('roof', 9, feet), ...holes('beacon', 9, beaconStuds)],
};

const clips: readonly Point[] = [
  { x: 96, y: 92 },
  { x: 96, y: 128 },
  { x: 114, y: 146 },
  { x: 150, y: 150 },
  { x: 170, y: 150 },
  { x: 196, y: 150 },
  { x: 220, y: 150 },
  { x: 236, y: 134 },
  { x: 236, y: 114 },
  { x: 236, y: 94 },
];

const harness: Drawing = {
  id: 'harness',
  title: 'Harness route, vehicle seen from above, front at the left',
  description:
    'From the battery at the front right the lead runs back to the relay, through the grommet in the bulkhead, along the sill past the switch panel and up the rear pillar to the beacon on the roof. Ten ties hold it, each drawn as a small ring.',
  widthMm: 400,
  heightMm: 240,
  shapes: [
    shape(
      'outline',
      rounded(
        [
          { x: 24, y: 40 },
          { x: 372, y: 32 },
          { x: 372, y: 208 },
          { x: 24, y: 200 },
        ],
        22,
      ),
    ),
    // Wheels, bulkhead, cab roof and load bed.
    shape(
      'detail',
      roundedBox(60, 20, 52, 14, 4),
      roundedBox(60, 206, 52, 14, 4),
      roundedBox(292, 14, 52, 14, 4),
      roundedBox(292, 212, 52, 14, 4),
    ),
    shape('outline', line({ x: 132, y: 38 }, { x: 132, y: 202 })),
    shape('detail', roundedBox(150, 50, 96, 140, 14)),
    shape('detail', line({ x: 262, y: 34 }, { x: 262, y: 206 })),
    shape('detail', roundedBox(44, 58, 40, 26, 3), circle(54, 71, 4), circle(74, 71, 4)),
    shape('detail', roundedBox(84, 106, 24, 14, 2)),
    shape('detail', circle(132, 150, 6)),
    shape('detail', roundedBox(166, 158, 34, 18, 3)),
    shape('outline', circle(197, 80, 14), circle(197, 80, 8)),
    shape(
      'outline',
      line(
        { x: 74, y: 71 },
        { x: 96, y: 78 },
        { x: 96, y: 128 },
        { x: 118, y: 150 },
        { x: 230, y: 150 },
        { x: 236, y: 144 },
        { x: 236, y: 86 },
        { x: 230, y: 80 },
        { x: 211, y: 80 },
      ),
    ),
    shape('detail', line({ x: 183, y: 150 }, { x: 183, y: 158 })),
    shape('detail', ...clips.map((clip) => circle(clip.x, clip.y, 4))),
  ],
  marks: [
    { text: 'battery', xMm: 62, yMm: 50 },
    { text: 'relay', xMm: 70, yMm: 126 },
    { text: 'grommet', xMm: 104, yMm: 170 },
    { text: 'panel', xMm: 220, yMm: 168 },
    { text: 'beacon', xMm: 197, yMm: 108 },
  ],
  holes: [],
};

const panelScrews: readonly Point[] = [
  { x: 34, y: 34 },
  { x: 146, y: 34 },
  { x: 146, y: 96 },
  { x: 34, y: 96 },
];

const panel: Drawing = {
  id: 'panel',
  title: 'Switch panel and relay',
  description:
    'A plate with two rocker switches, a screw at each corner numbered clockwise from the upper left. The relay stands to its right, held by one screw through its tab at the top.',
  widthMm: 260,
  heightMm: 130,
  shapes: [
    shape('outline', roundedBox(20, 20, 140, 90, 8)),
    shape('outline', roundedBox(56, 40, 22, 50, 4), roundedBox(102, 40, 22, 50, 4)),
    shape(
      'detail',
      line({ x: 56, y: 65 }, { x: 78, y: 65 }),
      line({ x: 102, y: 65 }, { x: 124, y: 65 }),
    ),
    shape('detail', ...ring({ x: 67, y: 52 }, 4, 1).map((lamp) => circle(lamp.x, lamp.y, 3))),
    shape('detail', ...ring({ x: 113, y: 52 }, 4, 1).map((lamp) => circle(lamp.x, lamp.y, 3))),
    shape('outline', roundedBox(190, 46, 46, 56, 4)),
    shape(
      'outline',
      polygon({ x: 201, y: 46 }, { x: 201, y: 20 }, { x: 225, y: 20 }, { x: 225, y: 46 }),
    ),
    shape(
      'detail',
      ...[197, 208, 218, 229].map((x) => line({ x, y: 102 }, { x, y: 114 })),
      hexagon({ x: 213, y: 31 }, 13),
    ),
  ],
  marks: [{ text: 'relay', xMm: 213, yMm: 75 }],
  holes: [...holes('panel', 5.5, panelScrews), ...holes('relay', 5.5, [{ x: 213, y: 31 }])],
};

export const beaconKitDrawings: Drawing[] = [bracket, harness, panel];
