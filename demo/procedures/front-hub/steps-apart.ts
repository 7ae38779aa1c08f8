import type { Step } from '@/lib/procedure';
import { caution, step } from '../write';

/** From the parked vehicle to the bare stub axle. */
export const stepsApart: Step[] = [
  step({
    id: 'loosen-nuts',
    title: 'Loosen the wheel nuts',
    instruction: 'Loosen the five wheel nuts half a turn while the wheel is on the ground.',
    drawing: 'wheel',
    shows: ['wheel-nuts'],
    powerTool: 'notAllowed',
    bookMinutes: 3,
    effects: [{ kind: 'loosens', groups: ['wheel-nuts'] }],
  }),
  step({
    id: 'jack-up',
    title: 'Jack up',
    instruction: 'Jack the front up, set it on two stands and rock it to prove it is steady.',
    cautions: [
      caution(
        'DANGER',
        'A vehicle that falls off its jack.',
        'It will crush whoever is under it.',
        "Level ground, chocked rear wheels, stands only at the points in the maker's manual.",
      ),
    ],
    powerTool: 'notUsed',
    after: ['loosen-nuts'],
    bookMinutes: 6,
    asks: [
      {
        kind: 'check',
        id: 'steady',
        label: 'On stands',
        passesWhen: 'Both stands carry the load and nothing moves when rocked.',
      },
    ],
  }),
  step({
    id: 'wheel-off',
    title: 'Wheel off',
    instruction: 'Spin the loosened nuts off and lift the wheel away.',
    cautions: [
      caution(
        'CAUTION',
        'Heavy wheel.',
        'Strained back, crushed toes.',
        'Lift with straight back or with the wheel trolley; wear safety shoes.',
      ),
    ],
    drawing: 'wheel',
    shows: ['wheel-nuts'],
    powerTool: 'allowed',
    after: ['jack-up'],
    bookMinutes: 3,
    effects: [{ kind: 'takesOff', parts: ['road-wheel'], groups: ['wheel-nuts'], tray: 'A' }],
  }),
  step({
    id: 'calliper-off',
    title: 'Calliper off',
    instruction: 'Take off the calliper with its pads and hang it up by a wire.',
    cautions: [
      caution(
        'WARNING',
        'Brake dust.',
        'Breathing it may harm the lungs.',
        'Wet it down or use extraction; never blow it off.',
      ),
      caution(
        'NOTICE',
        'A calliper hanging by its hose.',
        'The hose is damaged inside where nobody sees it.',
        'Wire it to the spring before letting go.',
      ),
    ],
    drawing: 'brake',
    shows: ['calliper-bolts'],
    powerTool: 'notAllowed',
    after: ['wheel-off'],
    bookMinutes: 8,
    effects: [
      {
        kind: 'takesOff',
        parts: ['calliper', 'pads'],
        groups: ['calliper-bolts'],
        tray: 'B',
      },
    ],
  }),
  step({
    id: 'disc-off',
    title: 'Disc off',
    instruction: 'Pull off the disc and measure it at its thinnest place.',
    drawing: 'brake',
    after: ['calliper-off'],
    bookMinutes: 5,
    effects: [{ kind: 'takesOff', parts: ['brake-disc'], groups: [] }],
    asks: [
      {
        kind: 'value',
        id: 'disc-thickness',
        label: 'Disc thickness',
        of: { kind: 'other', spec: { kind: 'atLeast', unit: 'mm', lower: 20 } },
      },
    ],
  }),
  step({
    id: 'sensor-off',
    title: 'Sensor off',
    instruction: 'Take out the sensor screw and draw the wheel speed sensor out.',
    orientation: 'Note how the lead runs; it goes back the same way.',
    drawing: 'brake',
    shows: ['sensor-screw'],
    powerTool: 'notAllowed',
    after: ['disc-off'],
    bookMinutes: 4,
    effects: [{ kind: 'takesOff', parts: ['speed-sensor'], groups: ['sensor-screw'], tray: 'B' }],
  }),
  step({
    id: 'hub-off',
    title: 'Hub off',
    instruction: 'Prise off the dust cap, undo the hub nut and draw the hub off.',
    cautions: [
      caution(
        'CAUTION',
        'Collar splinters when the staking is cut.',
        'Eye injury.',
        'Wear goggles and strike away from yourself.',
      ),
    ],
    drawing: 'brake',
    shows: ['hub-nut'],
    powerTool: 'notAllowed',
    after: ['sensor-off'],
    bookMinutes: 12,
    effects: [{ kind: 'takesOff', parts: ['dust-cap', 'hub'], groups: ['hub-nut'], tray: 'C' }],
  }),
];
