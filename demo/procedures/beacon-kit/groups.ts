import type { FastenerGroup } from '@/lib/procedure';
import { inHoles, percent, plusMinus } from '../write';

export const beaconKitGroups: FastenerGroup[] = [
  {
    id: 'roof-bolts',
    name: 'Roof bolts',
    noun: 'bolt',
    drawing: 'bracket',
    thread: 'M8',
    strengthClass: '8.8',
    safetyCritical: false,
    fasteners: inHoles('roof', [25, 25, 25, 25], false),
    passes: [
      {
        id: 'snug',
        stage: 'snug',
        tightening: { kind: 'torque', torque: percent(8, 'N.m', 20) },
      },
      {
        id: 'final',
        stage: 'final',
        tightening: { kind: 'torque', torque: plusMinus(20, 'N.m', 1, 2) },
      },
    ],
    // The sheet pulls the rear of each foot down first, on the sealant.
    sheetOrder: ['roof-4', 'roof-3', 'roof-1', 'roof-2'],
  },
  {
    id: 'beacon-studs',
    name: 'Beacon studs',
    noun: 'stud',
    drawing: 'bracket',
    thread: 'M8',
    strengthClass: '8.8',
    threadLocker: 'stud-locker',
    safetyCritical: false,
    fasteners: inHoles('beacon', [30, 30], false),
    passes: [
      {
        id: 'final',
        stage: 'final',
        tightening: { kind: 'torque', torque: percent(12, 'N.m', 15) },
      },
    ],
  },
  {
    id: 'beacon-nuts',
    name: 'Beacon nuts',
    noun: 'nut',
    drawing: 'bracket',
    thread: 'M8',
    strengthClass: '8.8',
    safetyCritical: false,
    fasteners: [1, 2].map((number) => ({
      id: `beacon-nut-${number}`,
      label: String(number),
      hole: `beacon-${number}`,
      singleUse: true,
    })),
    passes: [
      {
        id: 'final',
        stage: 'final',
        tightening: { kind: 'torque', torque: percent(16, 'N.m', 10) },
        // ISO 2320, M8 class 8: at most 6 N·m when first run on, at least 0.6 N·m later (from memory).
        prevailing: { kind: 'range', unit: 'N.m', lower: 0.6, upper: 6 },
      },
    ],
  },
  {
    id: 'relay-screw',
    name: 'Relay screw',
    noun: 'screw',
    drawing: 'panel',
    thread: 'M5',
    strengthClass: '8.8',
    threadLocker: 'screw-locker',
    safetyCritical: false,
    fasteners: inHoles('relay', [12], false),
    passes: [
      {
        id: 'final',
        stage: 'final',
        tightening: { kind: 'torque', torque: percent(5, 'N.m', 15) },
      },
    ],
  },
  {
    id: 'panel-screws',
    name: 'Panel screws',
    noun: 'screw',
    drawing: 'panel',
    thread: 'M5',
    strengthClass: '8.8',
    safetyCritical: false,
    fasteners: inHoles('panel', [16, 16, 16, 16], false),
    passes: [{ id: 'final', stage: 'final', tightening: { kind: 'byFeel' } }],
  },
];
