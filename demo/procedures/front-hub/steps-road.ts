import type { Step } from '@/lib/procedure';
import { caution, step } from '../write';

/** From the brake fluid to the road test. */
export const stepsRoad: Step[] = [
  step({
    id: 'bleed-open',
    title: 'Old fluid out',
    instruction: 'Open the bleed screw and pump the old brake fluid into the bottle.',
    cautions: [
      caution(
        'CAUTION',
        'Brake fluid attacks eyes, skin and paint.',
        'Injury and damage.',
        'Goggles and gloves on; cover the wing and rinse spills with water.',
      ),
    ],
    drawing: 'brake',
    shows: ['bleed-screw'],
    powerTool: 'notAllowed',
    after: ['calliper-tight'],
    bookMinutes: 8,
    effects: [
      { kind: 'loosens', groups: ['bleed-screw'] },
      { kind: 'drains', fluid: 'brake-fluid' },
    ],
    asks: [
      {
        kind: 'value',
        id: 'brake-fluid-drained',
        label: 'Old fluid in the bottle',
        of: {
          kind: 'fluid',
          fluid: 'brake-fluid',
          use: 'drained',
          spec: { kind: 'noFigure', unit: 'mL' },
        },
      },
      {
        kind: 'value',
        id: 'brake-fluid-spilled',
        label: 'Spilled, as estimated',
        of: {
          kind: 'fluid',
          fluid: 'brake-fluid',
          use: 'spilled',
          spec: { kind: 'atMost', unit: 'mL', upper: 50 },
        },
      },
    ],
  }),
  step({
    id: 'bleed-close',
    title: 'New fluid in',
    instruction: 'Fill with new fluid until no bubbles come and tighten the bleed screw.',
    cautions: [
      caution(
        'WARNING',
        'Air or wrong fluid in the brake.',
        'The pedal sinks and the brake can fail.',
        "Only fluid from a sealed can of the grade in the maker's manual.",
      ),
    ],
    drawing: 'brake',
    shows: ['bleed-screw'],
    powerTool: 'notAllowed',
    after: ['bleed-open'],
    bookMinutes: 12,
    effects: [
      { kind: 'fills', fluid: 'brake-fluid' },
      { kind: 'tightens', group: 'bleed-screw', pass: 'final' },
    ],
    asks: [
      {
        kind: 'value',
        id: 'brake-fluid-filled',
        label: 'New fluid filled',
        of: {
          kind: 'fluid',
          fluid: 'brake-fluid',
          use: 'filled',
          spec: { kind: 'range', unit: 'mL', lower: 420, upper: 600 },
        },
      },
      {
        kind: 'value',
        id: 'bleed-torque',
        label: 'Bleed screw torque',
        of: { kind: 'pass', group: 'bleed-screw', pass: 'final', measure: 'torque', each: false },
      },
    ],
  }),
  step({
    id: 'wheel-on',
    title: 'Wheel on',
    instruction: 'Put the wheel on and run all five nuts in by hand.',
    orientation: 'Valve down; the cone of each nut towards the wheel.',
    drawing: 'wheel',
    shows: ['wheel-nuts'],
    handStart: true,
    powerTool: 'notAllowed',
    after: ['calliper-tight'],
    bookMinutes: 4,
    effects: [
      { kind: 'fits', part: 'road-wheel', as: 'reused', uses: [] },
      { kind: 'runsIn', groups: ['wheel-nuts'], fasteners: 'same', uses: [] },
    ],
  }),
  step({
    id: 'wheel-snug',
    title: 'Wheel nuts, first pass',
    instruction: 'Snug the wheel nuts crosswise with the wheel still off the ground.',
    drawing: 'wheel',
    shows: ['wheel-nuts'],
    powerTool: 'notAllowed',
    after: ['wheel-on'],
    bookMinutes: 2,
    effects: [{ kind: 'tightens', group: 'wheel-nuts', pass: 'snug' }],
    asks: [
      {
        kind: 'value',
        id: 'wheel-snug-torque',
        label: 'Snug torque, all nuts',
        of: { kind: 'pass', group: 'wheel-nuts', pass: 'snug', measure: 'torque', each: false },
      },
    ],
  }),
  step({
    id: 'wheel-final',
    title: 'Wheel nuts, final pass',
    instruction: 'Lower the vehicle, tighten the wheel nuts crosswise and say each torque.',
    cautions: [
      caution(
        'WARNING',
        'Loose wheel.',
        'It can come off and kill.',
        'Hand torque wrench only; check again after the road test as local rules say.',
      ),
    ],
    drawing: 'wheel',
    shows: ['wheel-nuts'],
    powerTool: 'notAllowed',
    after: ['wheel-snug'],
    bookMinutes: 5,
    effects: [{ kind: 'tightens', group: 'wheel-nuts', pass: 'final' }],
    asks: [
      {
        kind: 'value',
        id: 'wheel-torque',
        label: 'Torque',
        of: { kind: 'pass', group: 'wheel-nuts', pass: 'final', measure: 'torque', each: true },
      },
    ],
  }),
  step({
    id: 'tyre-pressure',
    title: 'Tyre pressure',
    instruction: 'Read the tyre pressure cold and set it.',
    after: ['wheel-final'],
    bookMinutes: 2,
    asks: [
      {
        kind: 'value',
        id: 'tyre-pressure',
        label: 'Tyre pressure',
        of: { kind: 'other', spec: { kind: 'range', unit: '[psi]', lower: 32, upper: 36 } },
      },
    ],
  }),
  step({
    id: 'pedal',
    title: 'Brake pedal',
    instruction: 'Pump the pedal until it is firm, then hold it down for a minute.',
    cautions: [
      caution(
        'WARNING',
        'First pedal strokes go to the floor.',
        'The vehicle would not stop.',
        'Pump before moving the vehicle at all.',
      ),
    ],
    after: ['bleed-close'],
    bookMinutes: 3,
    asks: [
      {
        kind: 'check',
        id: 'pedal-firm',
        label: 'Pedal',
        passesWhen: 'It stays high and does not sink under the foot.',
      },
      {
        kind: 'check',
        id: 'no-fluid-leaks',
        label: 'Leaks',
        passesWhen: 'Calliper, hose and bleed screw stay dry.',
      },
    ],
  }),
  step({
    id: 'road-test',
    title: 'Road test',
    instruction: 'Brake from walking pace in the yard, then drive the test route.',
    cautions: [
      caution(
        'DANGER',
        'Brakes that do not work yet.',
        'A crash will injure or kill.',
        'Licensed driver only; first stops at walking pace in the empty yard; obey local rules.',
      ),
    ],
    after: ['pedal', 'tyre-pressure'],
    bookMinutes: 15,
    asks: [
      {
        kind: 'check',
        id: 'brakes-straight',
        label: 'Braking',
        passesWhen: 'It pulls up straight, without noise, and no warning lamp stays on.',
      },
    ],
  }),
];
