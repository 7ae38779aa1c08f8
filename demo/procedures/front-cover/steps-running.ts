import type { Step } from '@/lib/procedure';
import { caution, plusMinus, step } from '../write';

/** From the belt to the running engine. */
export const stepsRunning: Step[] = [
  step({
    id: 'belt-on',
    title: 'Belt on',
    instruction: 'Lay the belt on, fit the tensioner with a new plate and tighten its nut.',
    cautions: [
      caution(
        'CAUTION',
        'Belt and pulley pinch.',
        'Pinched fingers.',
        'Turn the engine only by the bolt and with fingers clear.',
      ),
    ],
    orientation: 'Chalk arrow clockwise; all ribs in their grooves.',
    drawing: 'drive',
    shows: ['tensioner-nut'],
    handStart: true,
    powerTool: 'notAllowed',
    after: ['crank-lock', 'pump-tight'],
    bookMinutes: 9,
    effects: [
      { kind: 'fits', part: 'drive-belt', as: 'reused', uses: [] },
      { kind: 'fits', part: 'tensioner', as: 'reused', uses: [] },
      {
        kind: 'fits',
        part: 'tensioner-plate',
        as: 'new',
        uses: [{ kitItem: 'locking-plate', quantity: 1 }],
      },
      { kind: 'runsIn', groups: ['tensioner-nut'], fasteners: 'same', uses: [] },
      { kind: 'tightens', group: 'tensioner-nut', pass: 'final' },
    ],
    asks: [
      {
        kind: 'value',
        id: 'tensioner-torque',
        label: 'Nut torque',
        of: {
          kind: 'pass',
          group: 'tensioner-nut',
          pass: 'final',
          measure: 'torque',
          each: false,
        },
      },
      {
        kind: 'value',
        id: 'belt-play',
        label: 'Belt play midway',
        of: { kind: 'other', spec: { kind: 'range', unit: 'mm', lower: 9, upper: 13 } },
      },
    ],
  }),
  step({
    id: 'fill-oil',
    title: 'Fill the oil',
    instruction: 'Fill with new oil of the grade on the filler and measure what goes in.',
    after: ['belt-on'],
    bookMinutes: 5,
    effects: [{ kind: 'fills', fluid: 'oil' }],
    asks: [
      {
        kind: 'value',
        id: 'oil-filled',
        label: 'Oil filled',
        of: {
          kind: 'fluid',
          fluid: 'oil',
          use: 'filled',
          spec: { kind: 'range', unit: 'L', lower: 3.5, upper: 4.1 },
        },
      },
    ],
  }),
  step({
    id: 'fill-coolant',
    title: 'Fill the coolant',
    instruction: 'Fill the coolant slowly, bleed the air and measure what goes in.',
    cautions: [
      caution(
        'NOTICE',
        'Dirty or mixed coolant.',
        'It clogs and corrodes the system.',
        'Put the drained coolant back only if it is clean; else use new.',
      ),
    ],
    after: ['belt-on'],
    bookMinutes: 10,
    effects: [{ kind: 'fills', fluid: 'coolant', strength: 0.5 }],
    asks: [
      {
        kind: 'value',
        id: 'coolant-filled',
        label: 'Coolant filled',
        of: {
          kind: 'fluid',
          fluid: 'coolant',
          use: 'filled',
          spec: plusMinus(8.5, 'L', 0.4),
        },
      },
    ],
  }),
  step({
    id: 'pressure-test',
    title: 'Pressure test',
    instruction: 'Pump the cold cooling system up and read the gauge after two minutes.',
    cautions: [
      caution(
        'WARNING',
        'System under pressure.',
        'Escaping coolant injures eyes and skin.',
        'Wear goggles and let the pressure off before taking the pump away.',
      ),
    ],
    after: ['fill-coolant'],
    bookMinutes: 8,
    asks: [
      {
        kind: 'value',
        id: 'held-pressure',
        label: 'Pressure after two minutes',
        of: { kind: 'other', spec: { kind: 'range', unit: 'bar', lower: 0.9, upper: 1.3 } },
      },
    ],
  }),
  step({
    id: 'trays-empty',
    title: 'Nothing left over',
    instruction: 'Look into every tray and count the parts that are still there.',
    after: ['belt-on'],
    bookMinutes: 2,
    asks: [{ kind: 'count', id: 'left-in-trays', label: 'Parts left in trays', expected: 0 }],
  }),
  step({
    id: 'run-engine',
    title: 'Run the engine',
    instruction: 'Put the earth lead back, run the engine until warm and look for leaks.',
    cautions: [
      caution(
        'DANGER',
        'Running belt and exhaust gas.',
        'They catch clothing and poison the air.',
        'Tie back hair and sleeves, keep clear of the belt, use the exhaust extraction.',
      ),
    ],
    after: ['fill-oil', 'pressure-test', 'trays-empty'],
    bookMinutes: 15,
    effects: [{ kind: 'fits', part: 'earth-lead', as: 'reused', uses: [] }],
    asks: [
      {
        kind: 'check',
        id: 'no-leaks',
        label: 'Leaks and noise',
        passesWhen: 'Cover, seal, pump and plugs stay dry and nothing rubs.',
      },
    ],
  }),
];
