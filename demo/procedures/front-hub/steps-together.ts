import type { Step } from '@/lib/procedure';
import { caution, step } from '../write';

/** From the bare stub axle to the tight calliper. */
export const stepsTogether: Step[] = [
  step({
    id: 'hub-on',
    title: 'Hub on',
    instruction: 'Clean and grease the bearing, push the hub on and run in a new nut by hand.',
    orientation: 'Collar of the nut outwards.',
    drawing: 'brake',
    shows: ['hub-nut'],
    handStart: true,
    powerTool: 'notAllowed',
    after: ['hub-off'],
    bookMinutes: 12,
    effects: [
      { kind: 'applies', consumable: 'bearing-grease', groups: [], parts: ['hub'] },
      { kind: 'fits', part: 'hub', as: 'reused', uses: [] },
      {
        kind: 'runsIn',
        groups: ['hub-nut'],
        fasteners: 'new',
        uses: [{ kitItem: 'hub-nut', quantity: 1 }],
      },
    ],
  }),
  step({
    id: 'hub-nut-tight',
    title: 'Hub nut',
    instruction: 'Tighten the hub nut to the snug torque, turn it on by the angle and stake it.',
    drawing: 'brake',
    shows: ['hub-nut'],
    powerTool: 'notAllowed',
    after: ['hub-on'],
    bookMinutes: 6,
    effects: [{ kind: 'tightens', group: 'hub-nut', pass: 'final' }],
    asks: [
      {
        kind: 'value',
        id: 'hub-torque',
        label: 'Snug torque',
        of: { kind: 'pass', group: 'hub-nut', pass: 'final', measure: 'torque', each: false },
      },
      {
        kind: 'value',
        id: 'hub-angle',
        label: 'Angle turned on',
        of: { kind: 'pass', group: 'hub-nut', pass: 'final', measure: 'angle', each: false },
      },
    ],
  }),
  step({
    id: 'hub-play',
    title: 'Hub play',
    instruction: 'Turn the hub, feel for play, measure it and press the dust cap on.',
    drawing: 'brake',
    after: ['hub-nut-tight'],
    bookMinutes: 6,
    effects: [{ kind: 'fits', part: 'dust-cap', as: 'reused', uses: [] }],
    asks: [
      {
        kind: 'value',
        id: 'hub-end-play',
        label: 'End play',
        of: { kind: 'other', spec: { kind: 'atMost', unit: 'mm', upper: 0.1 } },
      },
      {
        kind: 'check',
        id: 'hub-turns',
        label: 'Hub',
        passesWhen: 'It turns freely without noise or roughness.',
      },
    ],
  }),
  step({
    id: 'sensor-on',
    title: 'Sensor on',
    instruction: 'Refit the wheel speed sensor and tighten its screw.',
    orientation: 'Lead upwards, through both clips.',
    drawing: 'brake',
    shows: ['sensor-screw'],
    handStart: true,
    powerTool: 'notAllowed',
    after: ['hub-nut-tight'],
    bookMinutes: 5,
    effects: [
      { kind: 'fits', part: 'speed-sensor', as: 'reused', uses: [] },
      { kind: 'runsIn', groups: ['sensor-screw'], fasteners: 'same', uses: [] },
      { kind: 'tightens', group: 'sensor-screw', pass: 'final' },
    ],
    asks: [
      {
        kind: 'value',
        id: 'sensor-torque',
        label: 'Sensor screw torque',
        of: { kind: 'pass', group: 'sensor-screw', pass: 'final', measure: 'torque', each: false },
      },
    ],
  }),
  step({
    id: 'disc-on',
    title: 'Disc on',
    instruction: 'Clean the hub face and put on the disc: the old one if good, else a new one.',
    cautions: [
      caution(
        'WARNING',
        'Oil or grease on the disc.',
        'The brake may not hold.',
        'Degrease both faces; handle the disc by its rim with clean gloves.',
      ),
    ],
    drawing: 'brake',
    after: ['hub-play', 'sensor-on'],
    bookMinutes: 6,
    effects: [
      { kind: 'applies', consumable: 'brake-cleaner', groups: [], parts: ['brake-disc', 'hub'] },
      {
        kind: 'fits',
        part: 'brake-disc',
        as: 'asChosen',
        uses: [{ kitItem: 'disc', quantity: 1 }],
      },
    ],
    asks: [
      {
        kind: 'choice',
        id: 'disc-choice',
        label: 'Disc reused or replaced, and why',
        part: 'brake-disc',
      },
    ],
  }),
  step({
    id: 'calliper-on',
    title: 'Calliper on',
    instruction: 'Fit new pads, slide the calliper over the disc and run in two new bolts.',
    orientation: 'The pad with the wear spring goes inside.',
    drawing: 'brake',
    shows: ['calliper-bolts'],
    handStart: true,
    powerTool: 'notAllowed',
    after: ['disc-on'],
    bookMinutes: 9,
    effects: [
      { kind: 'fits', part: 'pads', as: 'new', uses: [{ kitItem: 'pad-set', quantity: 1 }] },
      { kind: 'fits', part: 'calliper', as: 'reused', uses: [] },
      {
        kind: 'runsIn',
        groups: ['calliper-bolts'],
        fasteners: 'new',
        uses: [{ kitItem: 'calliper-bolt', quantity: 2 }],
      },
    ],
  }),
  step({
    id: 'calliper-tight',
    title: 'Calliper bolts',
    instruction: 'Tighten both calliper bolts and say each torque.',
    cautions: [
      caution(
        'WARNING',
        'A loose calliper.',
        'The brake can fail and people can be killed.',
        "New bolts only; check the torque against the maker's manual.",
      ),
    ],
    drawing: 'brake',
    shows: ['calliper-bolts'],
    powerTool: 'notAllowed',
    after: ['calliper-on'],
    bookMinutes: 4,
    effects: [{ kind: 'tightens', group: 'calliper-bolts', pass: 'final' }],
    asks: [
      {
        kind: 'value',
        id: 'calliper-torque',
        label: 'Torque',
        of: {
          kind: 'pass',
          group: 'calliper-bolts',
          pass: 'final',
          measure: 'torque',
          each: true,
        },
      },
    ],
  }),
];
