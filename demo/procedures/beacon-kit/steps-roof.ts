import type { Step } from '@/lib/procedure';
import { caution, step } from '../write';

/** From the kit on the bench to the beacon on the roof. */
export const stepsRoof: Step[] = [
  step({
    id: 'count-kit',
    title: 'Count the kit',
    instruction: 'Lay the kit out on the bench and count its pieces.',
    bookMinutes: 4,
    asks: [{ kind: 'count', id: 'kit-pieces', label: 'Pieces in the kit', expected: 31 }],
  }),
  step({
    id: 'battery-rest',
    title: 'Battery at rest',
    instruction: 'Measure the battery voltage with everything switched off.',
    cautions: [
      caution(
        'WARNING',
        'Battery gas and short circuits.',
        'It can explode and spray acid.',
        'No flames or loose metal near it; take off rings; wear goggles.',
      ),
    ],
    drawing: 'harness',
    bookMinutes: 3,
    asks: [
      {
        kind: 'value',
        id: 'rest-voltage',
        label: 'Battery voltage',
        of: { kind: 'other', spec: { kind: 'atLeast', unit: 'V', lower: 12.4 } },
      },
    ],
  }),
  step({
    id: 'battery-off',
    title: 'Battery off',
    instruction: 'Take the earth lead off the battery and tie it back.',
    cautions: [
      caution(
        'WARNING',
        'Airbag and belt units keep their charge.',
        'They can go off and injure.',
        "Wait the time given in the maker's manual and leave yellow plugs alone.",
      ),
    ],
    drawing: 'harness',
    powerTool: 'notAllowed',
    after: ['battery-rest'],
    bookMinutes: 3,
    effects: [{ kind: 'takesOff', parts: ['earth-lead'], groups: [] }],
  }),
  step({
    id: 'bracket-on',
    title: 'Bracket on',
    instruction: 'Bed the bracket on sealant and run its four bolts in by hand.',
    cautions: [
      caution(
        'WARNING',
        'Work on the roof.',
        'A fall breaks bones.',
        'Use a platform with a rail; do not stand on the sill or the load.',
      ),
    ],
    orientation: 'The lead side faces the rear.',
    drawing: 'bracket',
    shows: ['roof-bolts'],
    handStart: true,
    powerTool: 'notAllowed',
    after: ['count-kit'],
    bookMinutes: 8,
    effects: [
      { kind: 'applies', consumable: 'roof-sealant', groups: [], parts: ['roof-bracket'] },
      {
        kind: 'fits',
        part: 'roof-bracket',
        as: 'new',
        uses: [{ kitItem: 'bracket', quantity: 1 }],
      },
      {
        kind: 'runsIn',
        groups: ['roof-bolts'],
        fasteners: 'new',
        uses: [{ kitItem: 'roof-bolt', quantity: 4 }],
      },
    ],
  }),
  step({
    id: 'bracket-tight',
    title: 'Roof bolts',
    instruction: "Snug the roof bolts, then tighten them in the sheet's order.",
    drawing: 'bracket',
    shows: ['roof-bolts'],
    powerTool: 'notAllowed',
    after: ['bracket-on'],
    bookMinutes: 5,
    effects: [
      { kind: 'tightens', group: 'roof-bolts', pass: 'snug' },
      { kind: 'tightens', group: 'roof-bolts', pass: 'final' },
    ],
    asks: [
      {
        kind: 'value',
        id: 'roof-snug',
        label: 'Snug torque, all bolts',
        of: { kind: 'pass', group: 'roof-bolts', pass: 'snug', measure: 'torque', each: false },
      },
      {
        kind: 'value',
        id: 'roof-torque',
        label: 'Torque',
        of: { kind: 'pass', group: 'roof-bolts', pass: 'final', measure: 'torque', each: true },
      },
    ],
  }),
  step({
    id: 'studs-in',
    title: 'Studs in',
    instruction: 'Wet the studs with thread-locker and drive both into the bracket.',
    cautions: [
      caution(
        'NOTICE',
        'High-strength thread-locker.',
        'A wrongly set stud comes out only with heat.',
        'Check the standing height before it sets.',
      ),
    ],
    orientation: 'Short thread into the bracket.',
    drawing: 'bracket',
    shows: ['beacon-studs'],
    oneShot: true,
    handStart: true,
    powerTool: 'notAllowed',
    after: ['bracket-tight'],
    bookMinutes: 5,
    effects: [
      { kind: 'applies', consumable: 'stud-locker', groups: ['beacon-studs'], parts: [] },
      {
        kind: 'runsIn',
        groups: ['beacon-studs'],
        fasteners: 'new',
        uses: [{ kitItem: 'stud', quantity: 2 }],
      },
      { kind: 'tightens', group: 'beacon-studs', pass: 'final' },
    ],
    asks: [
      {
        kind: 'value',
        id: 'stud-torque',
        label: 'Stud torque, both',
        of: { kind: 'pass', group: 'beacon-studs', pass: 'final', measure: 'torque', each: false },
      },
      {
        kind: 'check',
        id: 'stud-height',
        label: 'Studs',
        passesWhen: 'Both stand upright and equally high.',
      },
    ],
  }),
  step({
    id: 'beacon-on',
    title: 'Beacon on',
    instruction:
      'Set the beacon on its studs, measure what two new nuts take to turn, and tighten them.',
    orientation: 'The lamp faces the load bed.',
    drawing: 'bracket',
    shows: ['beacon-nuts'],
    handStart: true,
    powerTool: 'notAllowed',
    after: ['studs-in'],
    bookMinutes: 5,
    effects: [
      {
        kind: 'fits',
        part: 'beacon-lamp',
        as: 'new',
        uses: [{ kitItem: 'beacon', quantity: 1 }],
      },
      {
        kind: 'runsIn',
        groups: ['beacon-nuts'],
        fasteners: 'new',
        uses: [{ kitItem: 'flange-nut', quantity: 2 }],
      },
      { kind: 'tightens', group: 'beacon-nuts', pass: 'final' },
    ],
    asks: [
      {
        kind: 'value',
        id: 'beacon-turning',
        label: 'Torque to turn the nut before it seats',
        of: {
          kind: 'pass',
          group: 'beacon-nuts',
          pass: 'final',
          measure: 'prevailing',
          each: true,
        },
      },
      {
        kind: 'value',
        id: 'beacon-torque',
        label: 'Torque',
        of: { kind: 'pass', group: 'beacon-nuts', pass: 'final', measure: 'torque', each: true },
      },
    ],
  }),
];
