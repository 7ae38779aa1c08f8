import type { Step } from '@/lib/procedure';
import { caution, step } from '../write';

const movingBelt = caution(
  'WARNING',
  'Belt drive can turn.',
  'It crushes or severs fingers.',
  'Keep the key out and the battery off while hands are near the belt.',
);

/** From the belt to the bare, clean engine face. */
export const stepsApart: Step[] = [
  step({
    id: 'belt-off',
    title: 'Belt off',
    instruction: 'Take off the tensioner nut, the tensioner and the drive belt.',
    cautions: [movingBelt],
    orientation: 'Chalk an arrow on the belt: it goes back running the same way.',
    drawing: 'drive',
    shows: ['tensioner-nut'],
    powerTool: 'notAllowed',
    after: ['park'],
    bookMinutes: 6,
    effects: [
      {
        kind: 'takesOff',
        parts: ['drive-belt', 'tensioner', 'tensioner-plate'],
        groups: ['tensioner-nut'],
        tray: 'B',
      },
    ],
  }),
  step({
    id: 'crank-to-mark',
    title: 'Set the timing mark',
    instruction: 'Turn the crankshaft by hand until the notch meets the pointer.',
    cautions: [
      caution(
        'NOTICE',
        'Turning the engine backwards.',
        'The timing chain can jump a tooth.',
        'Turn clockwise only; overshoot means two more turns.',
      ),
    ],
    orientation: 'Clockwise, seen from the front.',
    drawing: 'drive',
    powerTool: 'notAllowed',
    after: ['belt-off'],
    bookMinutes: 5,
    asks: [
      {
        kind: 'check',
        id: 'mark-set',
        label: 'Timing mark',
        passesWhen: 'The notch and the pointer are in line.',
      },
    ],
  }),
  step({
    id: 'crank-pulley-off',
    title: 'Crank pulley off',
    instruction: 'Bend back the locking plate, hold the pulley and take off its bolt.',
    cautions: [
      caution(
        'WARNING',
        'High breakaway torque.',
        'A slipping bar breaks wrists and knuckles.',
        'Use the holder, pull the bar towards you and stand firm.',
      ),
    ],
    drawing: 'drive',
    shows: ['crank-bolt'],
    powerTool: 'notAllowed',
    after: ['crank-to-mark'],
    bookMinutes: 10,
    effects: [
      {
        kind: 'takesOff',
        parts: ['crank-pulley', 'crank-plate'],
        groups: ['crank-bolt'],
        tray: 'B',
      },
    ],
  }),
  step({
    id: 'pump-off',
    title: 'Coolant pump off',
    instruction: 'Take out the five pump bolts and lift off the pump with its ring.',
    orientation: 'Bolt 4 is the long one.',
    drawing: 'pump',
    shows: ['pump-bolts'],
    powerTool: 'allowed',
    after: ['coolant-plug-back', 'belt-off'],
    bookMinutes: 9,
    effects: [
      {
        kind: 'takesOff',
        parts: ['coolant-pump', 'pump-seal'],
        groups: ['pump-bolts'],
        tray: 'C',
      },
    ],
  }),
  step({
    id: 'cover-off',
    title: 'Front cover off',
    instruction: 'Take out the cover bolts, lay each in its place and lift the cover off.',
    cautions: [
      caution(
        'NOTICE',
        'Prying between the faces.',
        'A scratched face leaks.',
        'Tap the cover loose at the two lugs; never lever on the face.',
      ),
    ],
    orientation: 'Three lengths: keep every bolt in the tray place of its hole.',
    drawing: 'cover',
    shows: ['cover-bolts'],
    powerTool: 'notAllowed',
    after: ['sump-plug-back', 'crank-pulley-off', 'pump-off'],
    bookMinutes: 15,
    effects: [
      {
        kind: 'takesOff',
        parts: ['front-cover', 'cover-gasket'],
        groups: ['cover-bolts'],
        tray: 'D',
      },
    ],
    asks: [{ kind: 'count', id: 'bolts-laid', label: 'Bolts in tray D', expected: 12 }],
  }),
  step({
    id: 'seal-out',
    title: 'Old seal out',
    instruction: 'Press the old shaft seal out of the cover from the back.',
    cautions: [
      caution(
        'CAUTION',
        'Cover can slip off the press blocks.',
        'Pinched fingers.',
        'Support it all round before pressing; wear eye protection.',
      ),
    ],
    after: ['cover-off'],
    bookMinutes: 6,
    effects: [{ kind: 'takesOff', parts: ['shaft-seal'], groups: [] }],
  }),
  step({
    id: 'clean-faces',
    title: 'Clean the faces',
    instruction: 'Clean both gasket faces and measure how flat the cover is.',
    cautions: [
      caution(
        'CAUTION',
        'Cleaner vapour and splashes.',
        'It irritates eyes and lungs and burns easily.',
        'Use it in moving air, away from flames, with gloves and goggles.',
      ),
    ],
    after: ['seal-out'],
    bookMinutes: 18,
    effects: [{ kind: 'applies', consumable: 'face-cleaner', groups: [], parts: ['front-cover'] }],
    asks: [
      {
        kind: 'value',
        id: 'cover-flatness',
        label: 'Largest gap under the straight edge',
        of: { kind: 'other', spec: { kind: 'atMost', unit: 'mm', upper: 0.1 } },
      },
    ],
  }),
];
