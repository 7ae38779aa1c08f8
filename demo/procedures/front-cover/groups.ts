import type { FastenerGroup } from '@/lib/procedure';
import { inHoles, percent, plusMinus } from '../write';

/** Torques lie between 15 and 100 % of T = 0.2·F·d at proof load; a test checks each. */
export const frontCoverGroups: FastenerGroup[] = [
  {
    id: 'coolant-plug',
    name: 'Coolant drain plug',
    noun: 'plug',
    drawing: 'plugs',
    thread: 'M10',
    strengthClass: '8.8',
    safetyCritical: false,
    fasteners: inHoles('coolant', [16], false),
    passes: [
      {
        id: 'final',
        stage: 'final',
        tightening: { kind: 'torque', torque: percent(15, 'N.m', 10) },
      },
    ],
  },
  {
    id: 'sump-plug',
    name: 'Oil drain plug',
    noun: 'plug',
    drawing: 'plugs',
    thread: 'M14x1.5',
    strengthClass: '8.8',
    safetyCritical: false,
    fasteners: inHoles('sump', [20], false),
    passes: [
      {
        id: 'final',
        stage: 'final',
        tightening: { kind: 'torque', torque: percent(38, 'N.m', 10) },
      },
    ],
  },
  {
    id: 'tensioner-nut',
    name: 'Tensioner nut',
    noun: 'nut',
    drawing: 'drive',
    thread: 'M10',
    strengthClass: '8.8',
    safetyCritical: false,
    fasteners: [{ id: 'tensioner-1', label: '1', hole: 'tensioner-1', singleUse: false }],
    passes: [
      {
        id: 'final',
        stage: 'final',
        tightening: { kind: 'torque', torque: plusMinus(33, '[lbf_av].[ft_i]', 3) },
      },
    ],
  },
  {
    id: 'crank-bolt',
    name: 'Crankshaft pulley bolt',
    noun: 'bolt',
    drawing: 'drive',
    thread: 'M14x1.5',
    strengthClass: '10.9',
    threadLocker: 'bolt-locker',
    safetyCritical: false,
    fasteners: inHoles('crank', [55], false),
    passes: [
      {
        id: 'first',
        stage: 'intermediate',
        tightening: { kind: 'torque', torque: percent(90, 'N.m', 8) },
      },
      {
        id: 'final',
        stage: 'final',
        tightening: { kind: 'torque', torque: percent(180, 'N.m', 6) },
      },
    ],
  },
  {
    id: 'pump-bolts',
    name: 'Coolant pump bolts',
    noun: 'bolt',
    drawing: 'pump',
    thread: 'M6',
    strengthClass: '8.8',
    safetyCritical: false,
    fasteners: inHoles('pump', [22, 22, 22, 35, 22], false),
    passes: [
      {
        id: 'final',
        stage: 'final',
        tightening: { kind: 'torque', torque: plusMinus(9.5, 'N.m', 1) },
      },
    ],
  },
  {
    id: 'cover-bolts',
    name: 'Cover bolts',
    noun: 'bolt',
    drawing: 'cover',
    thread: 'M8',
    strengthClass: '8.8',
    safetyCritical: false,
    fasteners: inHoles('cover', [40, 25, 40, 40, 25, 25, 25, 60, 60, 25, 25, 40], false),
    passes: [
      {
        id: 'snug',
        stage: 'snug',
        tightening: { kind: 'torque', torque: plusMinus(10, 'N.m', 2) },
      },
      {
        id: 'final',
        stage: 'final',
        tightening: { kind: 'torque', torque: plusMinus(22, 'N.m', 2.5) },
      },
    ],
  },
];
