import { describe, expect, it } from 'vitest';
import { checkGroupTightening, type Specification } from '@/lib/fastening';
import { fastenerGroupSchema, type Pass, type Tightening } from '@/lib/procedure';

const torque = (target: number, unit: Specification['unit'] = 'N.m'): Specification => ({
  kind: 'target',
  unit,
  target,
  tolerance: { in: 'percent', plus: 10, minus: 10 },
});
const to = (spec: Specification): Tightening => ({ kind: 'torque', torque: spec });
const turn = (deg: number): Specification => ({
  kind: 'target',
  unit: 'deg',
  target: deg,
  tolerance: { in: 'unit', plus: 5, minus: 5 },
});
const pass = (id: string, stage: Pass['stage'], tightening: Tightening): Pass => ({
  id,
  stage,
  tightening,
});

const group = (passes: Pass[], changes: object = {}) =>
  fastenerGroupSchema.parse({
    id: 'cover-bolts',
    name: 'Cover bolts',
    noun: 'bolt',
    drawing: 'cover',
    thread: 'M8',
    strengthClass: '8.8',
    safetyCritical: false,
    fasteners: [
      { id: 'bolt-1', label: '1', hole: 'a', singleUse: false },
      { id: 'bolt-2', label: '2', hole: 'b', singleUse: false },
    ],
    passes,
    ...changes,
  });

const faults = (...of: Parameters<typeof group>) =>
  checkGroupTightening(group(...of)).map(({ code, severity, pass: at }) => [code, severity, at]);

const singleUse = {
  fasteners: [{ id: 'bolt-1', label: '1', hole: 'a', singleUse: true }],
};

describe('a group of fasteners', () => {
  it('may be tightened in rising passes', () => {
    const passes = [
      pass('first', 'snug', { kind: 'byFeel' }),
      pass('second', 'intermediate', to(torque(12))),
      pass('third', 'intermediate', to(torque(24))),
      pass('check', 'final', to(torque(24))),
    ];
    expect(faults(passes)).toEqual([]);
  });

  it('may be low in a pass before the last, not in the last', () => {
    expect(
      faults([pass('first', 'snug', to(torque(3))), pass('last', 'final', to(torque(24)))]),
    ).toEqual([]);
    expect(faults([pass('last', 'final', to(torque(3)))])).toEqual([
      ['tooLowForThread', 'doubtful', 'last'],
    ]);
  });

  it('may be low where it is a plug, which only seals', () => {
    expect(faults([pass('last', 'final', to(torque(3)))], { noun: 'plug' })).toEqual([]);
  });

  it('must not be higher than its bolts stand in any pass', () => {
    expect(
      faults([pass('first', 'snug', to(torque(88))), pass('last', 'final', to(torque(90)))]),
    ).toEqual([
      ['tooHighForThread', 'doubtful', 'first'],
      ['tooHighForThread', 'doubtful', 'last'],
    ]);
  });

  it('should not ask for less torque than the pass before', () => {
    expect(
      faults([pass('first', 'snug', to(torque(20))), pass('last', 'final', to(torque(12)))]),
    ).toEqual([['passesNotRising', 'doubtful', undefined]]);
  });

  it('turned by angle should be single use', () => {
    const byAngle: Tightening = { kind: 'torqueAngle', snugTorque: torque(10), angle: turn(90) };
    expect(faults([pass('last', 'final', byAngle)])).toEqual([
      ['angleReused', 'doubtful', undefined],
    ]);
    expect(faults([pass('last', 'final', byAngle)], singleUse)).toEqual([]);
  });

  it('needs an angle that is one, and a torque that is one', () => {
    const with_ = (snugTorque: Specification, angle: Specification) =>
      faults([pass('last', 'final', { kind: 'torqueAngle', snugTorque, angle })], singleUse);
    expect(with_(torque(10), { kind: 'noFigure', unit: 'deg' })).toEqual([
      ['noAngle', 'wrong', 'last'],
    ]);
    expect(with_(torque(10), turn(-60))).toEqual([['noAngle', 'wrong', 'last']]);
    expect(with_(torque(10), turn(2))).toEqual([['noAngle', 'wrong', 'last']]);
    expect(with_(torque(10), torque(10))).toEqual([['wrongQuantity', 'wrong', 'last']]);
    expect(with_(turn(90), turn(90))).toEqual([['wrongQuantity', 'wrong', 'last']]);
    expect(with_(torque(10), turn(450))).toEqual([['overOneTurn', 'doubtful', 'last']]);
    expect(faults([pass('last', 'final', to(turn(90)))])).toEqual([
      ['wrongQuantity', 'wrong', 'last'],
    ]);
  });

  it('should have a thread and a strength that are known', () => {
    const last = [pass('last', 'final', to(torque(24)))];
    expect(faults(last, { thread: 'M13' })).toEqual([['unknownThread', 'doubtful', 'last']]);
    expect(faults(last, { thread: 'M8x6' })).toEqual([['unknownThread', 'doubtful', 'last']]);
    expect(faults(last, { strengthClass: 'strong' })).toEqual([
      ['unknownStrength', 'doubtful', 'last'],
    ]);
  });

  it('by feel has no figure to be doubted', () => {
    expect(faults([pass('last', 'final', { kind: 'byFeel' })])).toEqual([]);
  });
});
