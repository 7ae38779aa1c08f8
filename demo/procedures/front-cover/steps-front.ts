import type { Step } from '@/lib/procedure';
import { caution, step } from '../write';

/** From the coolant pump to the locked pulley bolt. */
export const stepsFront: Step[] = [
  step({
    id: 'pump-on',
    title: 'Coolant pump on',
    instruction: 'Grease a new ring, seat the pump and run its five bolts in by hand.',
    orientation: 'Hose neck to the right; the long bolt at 4.',
    drawing: 'pump',
    shows: ['pump-bolts'],
    handStart: true,
    powerTool: 'notAllowed',
    after: ['cover-final'],
    bookMinutes: 6,
    effects: [
      { kind: 'applies', consumable: 'ring-grease', groups: [], parts: ['pump-seal'] },
      {
        kind: 'fits',
        part: 'pump-seal',
        as: 'new',
        uses: [{ kitItem: 'pump-ring', quantity: 1 }],
      },
      { kind: 'fits', part: 'coolant-pump', as: 'reused', uses: [] },
      { kind: 'runsIn', groups: ['pump-bolts'], fasteners: 'same', uses: [] },
    ],
  }),
  step({
    id: 'pump-tight',
    title: 'Pump bolts',
    instruction: 'Tighten the five pump bolts crosswise.',
    drawing: 'pump',
    shows: ['pump-bolts'],
    powerTool: 'notAllowed',
    after: ['pump-on'],
    bookMinutes: 4,
    effects: [{ kind: 'tightens', group: 'pump-bolts', pass: 'final' }],
    asks: [
      {
        kind: 'value',
        id: 'pump-torque',
        label: 'Torque, all pump bolts',
        of: { kind: 'pass', group: 'pump-bolts', pass: 'final', measure: 'torque', each: false },
      },
    ],
  }),
  step({
    id: 'crank-pulley-on',
    title: 'Crank pulley on',
    instruction: 'Slide the pulley over its key and run the bolt in with thread-locker.',
    cautions: [
      caution(
        'CAUTION',
        'Thread-locker on skin.',
        'It can cause a rash.',
        'Wear gloves; wipe off what runs out.',
      ),
    ],
    orientation: 'Key and slot in line; the plate’s peg sits in the small hole.',
    drawing: 'drive',
    shows: ['crank-bolt'],
    handStart: true,
    powerTool: 'notAllowed',
    after: ['cover-final'],
    bookMinutes: 6,
    effects: [
      { kind: 'fits', part: 'crank-pulley', as: 'reused', uses: [] },
      {
        kind: 'fits',
        part: 'crank-plate',
        as: 'new',
        uses: [{ kitItem: 'locking-plate', quantity: 1 }],
      },
      { kind: 'applies', consumable: 'bolt-locker', groups: ['crank-bolt'], parts: [] },
      { kind: 'runsIn', groups: ['crank-bolt'], fasteners: 'same', uses: [] },
    ],
  }),
  step({
    id: 'crank-first',
    title: 'Pulley bolt, first stage',
    instruction: 'Hold the pulley with the holder and tighten its bolt to the first stage.',
    drawing: 'drive',
    shows: ['crank-bolt'],
    powerTool: 'notAllowed',
    after: ['crank-pulley-on'],
    bookMinutes: 3,
    effects: [{ kind: 'tightens', group: 'crank-bolt', pass: 'first' }],
    asks: [
      {
        kind: 'value',
        id: 'crank-first-torque',
        label: 'Torque, first stage',
        of: { kind: 'pass', group: 'crank-bolt', pass: 'first', measure: 'torque', each: false },
      },
    ],
  }),
  step({
    id: 'crank-final',
    title: 'Pulley bolt, final stage',
    instruction: 'Tighten the pulley bolt evenly to the final torque.',
    cautions: [
      caution(
        'WARNING',
        'High torque on a long bar.',
        'A slipping socket breaks wrists and knuckles.',
        'Seat the socket fully, pull evenly and keep the other hand off the belt.',
      ),
    ],
    drawing: 'drive',
    shows: ['crank-bolt'],
    powerTool: 'notAllowed',
    after: ['crank-first'],
    bookMinutes: 4,
    effects: [{ kind: 'tightens', group: 'crank-bolt', pass: 'final' }],
    asks: [
      {
        kind: 'value',
        id: 'crank-final-torque',
        label: 'Final torque',
        of: { kind: 'pass', group: 'crank-bolt', pass: 'final', measure: 'torque', each: false },
      },
    ],
  }),
  step({
    id: 'crank-lock',
    title: 'Lock the bolt',
    instruction: 'Bend one tab of the locking plate hard against a flat of the bolt head.',
    drawing: 'drive',
    shows: ['crank-bolt'],
    after: ['crank-final'],
    bookMinutes: 3,
    asks: [
      {
        kind: 'check',
        id: 'tab-bent',
        label: 'Locking plate',
        passesWhen: 'One tab lies flat on the head without a crack.',
      },
    ],
  }),
];
