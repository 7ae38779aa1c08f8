import type { Step } from '@/lib/procedure';
import { caution, step } from '../write';

/** From the harness to the lights. */
export const stepsWiring: Step[] = [
  step({
    id: 'harness-in',
    title: 'Harness in',
    instruction: 'Run the harness through the grommet and tie it at the ten places shown.',
    cautions: [
      caution(
        'WARNING',
        'A chafed lead.',
        'It can short out and set the vehicle on fire.',
        'Keep it off edges, hot and moving parts; no tie on brake or fuel lines.',
      ),
    ],
    orientation: 'Battery end forward; slack loop at the beacon plug.',
    drawing: 'harness',
    after: ['battery-off'],
    bookMinutes: 20,
    effects: [
      {
        kind: 'fits',
        part: 'bulkhead-grommet',
        as: 'new',
        uses: [{ kitItem: 'grommet', quantity: 1 }],
      },
      {
        kind: 'fits',
        part: 'wiring-harness',
        as: 'new',
        uses: [
          { kitItem: 'harness', quantity: 1 },
          { kitItem: 'tie', quantity: 10 },
        ],
      },
    ],
    asks: [
      {
        kind: 'check',
        id: 'harness-clear',
        label: 'Harness',
        passesWhen: 'It hangs nowhere, rubs nowhere and the doors close freely.',
      },
    ],
  }),
  step({
    id: 'relay-on',
    title: 'Relay on',
    instruction: 'Screw the relay to the bulkhead with thread-locker and plug it in.',
    orientation: 'Plug downwards, so that water runs off.',
    drawing: 'panel',
    shows: ['relay-screw'],
    handStart: true,
    powerTool: 'notAllowed',
    after: ['harness-in'],
    bookMinutes: 5,
    effects: [
      { kind: 'applies', consumable: 'contact-grease', groups: [], parts: ['power-relay'] },
      { kind: 'applies', consumable: 'screw-locker', groups: ['relay-screw'], parts: [] },
      {
        kind: 'fits',
        part: 'power-relay',
        as: 'new',
        uses: [{ kitItem: 'relay', quantity: 1 }],
      },
      {
        kind: 'runsIn',
        groups: ['relay-screw'],
        fasteners: 'new',
        uses: [{ kitItem: 'relay-screw', quantity: 1 }],
      },
      { kind: 'tightens', group: 'relay-screw', pass: 'final' },
    ],
    asks: [
      {
        kind: 'value',
        id: 'relay-torque',
        label: 'Relay screw torque',
        of: { kind: 'pass', group: 'relay-screw', pass: 'final', measure: 'torque', each: false },
      },
    ],
  }),
  step({
    id: 'panel-on',
    title: 'Switch panel on',
    instruction: 'Plug in the switch panel and screw it to the dash by feel.',
    cautions: [
      caution(
        'NOTICE',
        'Screws in plastic.',
        'Overtightened, they strip.',
        'Stop as soon as the plate lies flat.',
      ),
    ],
    orientation: 'Pilot lamps at the top.',
    drawing: 'panel',
    shows: ['panel-screws'],
    handStart: true,
    powerTool: 'allowed',
    after: ['harness-in'],
    bookMinutes: 6,
    effects: [
      {
        kind: 'fits',
        part: 'panel',
        as: 'new',
        uses: [{ kitItem: 'switch-panel', quantity: 1 }],
      },
      {
        kind: 'runsIn',
        groups: ['panel-screws'],
        fasteners: 'new',
        uses: [{ kitItem: 'panel-screw', quantity: 4 }],
      },
      { kind: 'tightens', group: 'panel-screws', pass: 'final' },
    ],
  }),
  step({
    id: 'fuse-in',
    title: 'Fuse in',
    instruction: 'Push one fuse in, and lay the spare one in the glove box as left over.',
    drawing: 'harness',
    after: ['relay-on', 'panel-on', 'beacon-on'],
    bookMinutes: 2,
    effects: [
      { kind: 'fits', part: 'main-fuse', as: 'new', uses: [{ kitItem: 'fuse', quantity: 1 }] },
    ],
  }),
  step({
    id: 'battery-on',
    title: 'Battery on',
    instruction: 'Put the earth lead back with all switches off.',
    cautions: [
      caution(
        'CAUTION',
        'Spark at the pole.',
        'Burnt fingers, damaged units.',
        'Everything off; press the clamp on in one move.',
      ),
    ],
    drawing: 'harness',
    powerTool: 'notAllowed',
    after: ['fuse-in'],
    bookMinutes: 3,
    effects: [{ kind: 'fits', part: 'earth-lead', as: 'reused', uses: [] }],
  }),
  step({
    id: 'voltage-on-load',
    title: 'Voltage on load',
    instruction: 'Start the engine, switch the beacon and lamp on and measure at the plug.',
    cautions: [
      caution(
        'WARNING',
        'Exhaust gas.',
        'It poisons in closed rooms.',
        'Use the exhaust extraction.',
      ),
    ],
    drawing: 'harness',
    after: ['battery-on'],
    bookMinutes: 5,
    asks: [
      {
        kind: 'value',
        id: 'plug-voltage',
        label: 'Voltage at the beacon plug',
        of: { kind: 'other', spec: { kind: 'range', unit: 'V', lower: 13.2, upper: 14.6 } },
      },
      {
        kind: 'value',
        id: 'earth-drop',
        label: 'Loss on the earth side',
        of: { kind: 'other', spec: { kind: 'atMost', unit: 'mV', upper: 200 } },
      },
    ],
  }),
  step({
    id: 'lights-work',
    title: 'Lights work',
    instruction: 'Try every switch and look at the beacon, the lamp and both pilot lamps.',
    cautions: [
      caution(
        'CAUTION',
        'Bright flashing light.',
        'It dazzles and can upset some people.',
        'Warn those near by; do not look straight into it.',
      ),
    ],
    after: ['battery-on'],
    bookMinutes: 3,
    asks: [
      {
        kind: 'check',
        id: 'lights-as-switched',
        label: 'Lights',
        passesWhen: 'Each switch lights its own lamp and its pilot, and nothing else.',
      },
    ],
  }),
];
