import type { FastenerGroup } from '@/lib/procedure';
import { inHoles, percent } from '../write';

/** Wheel, hub and calliper are safety-critical: their readings must be proven inside the limits. */
export const frontHubGroups: FastenerGroup[] = [
  {
    id: 'wheel-nuts',
    name: 'Wheel nuts',
    noun: 'nut',
    drawing: 'wheel',
    thread: 'M12x1.5',
    strengthClass: '10.9',
    driveIn: '1/2',
    safetyCritical: true,
    fasteners: [1, 2, 3, 4, 5].map((number) => ({
      id: `wheel-${number}`,
      label: String(number),
      hole: `wheel-${number}`,
      singleUse: false,
    })),
    passes: [
      {
        id: 'snug',
        stage: 'snug',
        tightening: { kind: 'torque', torque: percent(50, 'N.m', 20) },
      },
      {
        id: 'final',
        stage: 'final',
        tightening: { kind: 'torque', torque: percent(110, 'N.m', 10) },
      },
    ],
  },
  {
    id: 'calliper-bolts',
    name: 'Calliper bolts',
    noun: 'bolt',
    drawing: 'brake',
    thread: 'M12',
    strengthClass: '10.9',
    driveIn: '1/2',
    safetyCritical: true,
    fasteners: inHoles('calliper', [45, 45], true),
    passes: [
      {
        id: 'final',
        stage: 'final',
        tightening: { kind: 'torque', torque: percent(105, 'N.m', 10) },
      },
    ],
  },
  {
    id: 'hub-nut',
    name: 'Hub nut',
    noun: 'nut',
    drawing: 'brake',
    thread: 'M20x1.5',
    strengthClass: '8.8',
    driveIn: '1/2',
    safetyCritical: true,
    fasteners: [{ id: 'hub-1', label: '1', hole: 'hub-1', singleUse: true }],
    passes: [
      {
        id: 'final',
        stage: 'final',
        tightening: {
          kind: 'torqueAngle',
          snugTorque: percent(120, 'N.m', 10),
          angle: {
            kind: 'target',
            unit: 'deg',
            target: 60,
            tolerance: { in: 'unit', plus: 5, minus: 5 },
          },
        },
      },
    ],
  },
  {
    id: 'bleed-screw',
    name: 'Bleed screw',
    noun: 'screw',
    drawing: 'brake',
    thread: 'M8',
    strengthClass: '8.8',
    safetyCritical: true,
    fasteners: inHoles('bleed', [28], false),
    passes: [
      {
        id: 'final',
        stage: 'final',
        tightening: { kind: 'torque', torque: percent(90, '[lbf_av].[in_i]', 15) },
      },
    ],
  },
  {
    id: 'sensor-screw',
    name: 'Sensor screw',
    noun: 'screw',
    drawing: 'brake',
    thread: 'M6',
    strengthClass: '8.8',
    safetyCritical: false,
    fasteners: inHoles('sensor', [16], false),
    passes: [
      {
        id: 'final',
        stage: 'final',
        tightening: { kind: 'torque', torque: percent(8, 'N.m', 15) },
      },
    ],
  },
];
