import type { Step } from '@/lib/procedure';
import { caution, step } from '../write';

/** From the parked vehicle to both plugs back. */
export const stepsDrain: Step[] = [
  step({
    id: 'park',
    title: 'Make safe',
    instruction: 'Park on the level, chock the wheels and take off the battery earth lead.',
    cautions: [
      caution(
        'WARNING',
        'Hot engine and hot coolant.',
        'They scald and burn.',
        "Let it cool below 50 °C before opening anything; follow the maker's manual.",
      ),
    ],
    powerTool: 'notAllowed',
    bookMinutes: 6,
    effects: [{ kind: 'takesOff', parts: ['earth-lead'], groups: [] }],
    asks: [
      {
        kind: 'value',
        id: 'engine-temperature',
        label: 'Coolant temperature',
        of: { kind: 'other', spec: { kind: 'atMost', unit: 'Cel', upper: 50 } },
      },
    ],
  }),
  step({
    id: 'drain-coolant',
    title: 'Drain the coolant',
    instruction: 'Take out the coolant plug and drain into a clean measuring pan.',
    cautions: [
      caution(
        'CAUTION',
        'Coolant is poisonous and slippery.',
        'It harms people, animals and water.',
        'Catch all of it, wear gloves and wipe spills at once.',
      ),
    ],
    drawing: 'plugs',
    shows: ['coolant-plug'],
    powerTool: 'notAllowed',
    after: ['park'],
    bookMinutes: 8,
    effects: [
      { kind: 'drains', fluid: 'coolant' },
      {
        kind: 'takesOff',
        parts: ['coolant-plug-washer'],
        groups: ['coolant-plug'],
        tray: 'A',
      },
    ],
    asks: [
      {
        kind: 'value',
        id: 'coolant-drained',
        label: 'Coolant drained',
        of: {
          kind: 'fluid',
          fluid: 'coolant',
          use: 'drained',
          spec: { kind: 'range', unit: 'L', lower: 7.5, upper: 9 },
        },
      },
    ],
  }),
  step({
    id: 'coolant-plug-back',
    title: 'Coolant plug back',
    instruction: 'Refit the coolant plug with a new crush washer and tighten it.',
    drawing: 'plugs',
    shows: ['coolant-plug'],
    handStart: true,
    powerTool: 'notAllowed',
    after: ['drain-coolant'],
    bookMinutes: 3,
    effects: [
      {
        kind: 'fits',
        part: 'coolant-plug-washer',
        as: 'new',
        uses: [{ kitItem: 'coolant-washer', quantity: 1 }],
      },
      { kind: 'runsIn', groups: ['coolant-plug'], fasteners: 'same', uses: [] },
      { kind: 'tightens', group: 'coolant-plug', pass: 'final' },
    ],
    asks: [
      {
        kind: 'value',
        id: 'coolant-plug-torque',
        label: 'Plug torque',
        of: {
          kind: 'pass',
          group: 'coolant-plug',
          pass: 'final',
          measure: 'torque',
          each: false,
        },
      },
    ],
  }),
  step({
    id: 'drain-oil',
    title: 'Drain the oil',
    instruction: 'Take out the oil drain plug and drain into the measuring pan.',
    cautions: [
      caution(
        'CAUTION',
        'Used oil.',
        'It irritates the skin and may harm health.',
        'Wear gloves; keep it for disposal as local rules say.',
      ),
    ],
    drawing: 'plugs',
    shows: ['sump-plug'],
    powerTool: 'notAllowed',
    after: ['park'],
    bookMinutes: 8,
    effects: [
      { kind: 'drains', fluid: 'oil' },
      { kind: 'takesOff', parts: ['sump-plug-washer'], groups: ['sump-plug'], tray: 'A' },
    ],
    asks: [
      {
        kind: 'value',
        id: 'oil-drained',
        label: 'Oil drained',
        of: {
          kind: 'fluid',
          fluid: 'oil',
          use: 'drained',
          spec: { kind: 'noFigure', unit: 'L' },
        },
      },
    ],
  }),
  step({
    id: 'sump-plug-back',
    title: 'Oil plug back',
    instruction: 'Refit the oil drain plug with a new crush washer and tighten it.',
    drawing: 'plugs',
    shows: ['sump-plug'],
    handStart: true,
    powerTool: 'notAllowed',
    after: ['drain-oil'],
    bookMinutes: 3,
    effects: [
      {
        kind: 'fits',
        part: 'sump-plug-washer',
        as: 'new',
        uses: [{ kitItem: 'sump-washer', quantity: 1 }],
      },
      { kind: 'runsIn', groups: ['sump-plug'], fasteners: 'same', uses: [] },
      { kind: 'tightens', group: 'sump-plug', pass: 'final' },
    ],
    asks: [
      {
        kind: 'value',
        id: 'sump-plug-torque',
        label: 'Plug torque',
        of: { kind: 'pass', group: 'sump-plug', pass: 'final', measure: 'torque', each: false },
      },
    ],
  }),
];
