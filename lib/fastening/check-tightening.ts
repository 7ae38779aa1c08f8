import type { FastenerGroup, Pass, Tightening } from '../procedure/revision';
import { checkSpecification } from './check-specification';
import { doubtful, wrong, type Fault } from './fault';
import { specificationQuantity, toleranceInterval, type Specification } from './specification';

/** Whether what one pass asks for makes sense by itself. */
export const checkTightening = (tightening: Tightening): readonly Fault[] => {
  switch (tightening.kind) {
    case 'torque':
      return checkTorque(tightening.torque);
    case 'torqueAngle':
      return [...checkTorque(tightening.snugTorque), ...checkAngle(tightening.angle)];
    case 'byFeel':
      return [];
  }
};

/**
 * Whether the passes of a group and its fasteners go together: none asks for less than the one before, and a fastener turned by angle is not used again. That rule is common practice, no source:
 * turning by angle may stretch it past its yield point; only the maker's sheet can say that it may be reused.
 */
export const checkPasses = (
  group: Pick<FastenerGroup, 'passes' | 'fasteners'>,
): readonly Fault[] => {
  const { passes, fasteners } = group;
  const faults: Fault[] = [];
  const torques = passes.flatMap(({ tightening }) => passTorque(tightening) ?? []);
  if (torques.some((torque, k) => torque < (torques[k - 1] ?? torque))) {
    faults.push(doubtful('passesNotRising', 'A pass asks for less torque than the one before.'));
  }
  const byAngle = passes.some(({ tightening }) => tightening.kind === 'torqueAngle');
  if (byAngle && fasteners.some(({ singleUse }) => !singleUse)) {
    faults.push(
      doubtful(
        'angleReused',
        'Turned by angle but not marked single use: only the maker’s sheet may allow it again.',
      ),
    );
  }
  return faults;
};

const checkTorque = (spec: Specification): readonly Fault[] =>
  specificationQuantity(spec) === 'torque'
    ? checkSpecification(spec)
    : [wrong('wrongQuantity', 'The torque is given in a unit that is none of torque.')];

const checkAngle = (spec: Specification): readonly Fault[] => {
  if (specificationQuantity(spec) !== 'angle') {
    return [wrong('wrongQuantity', 'The angle is given in a unit that is none of angle.')];
  }
  const { lower, upper } = toleranceInterval(spec) ?? {};
  // A turn back is no tightening: below zero is wrong here, not only odd.
  const faults = checkSpecification(spec).filter(({ code }) => code !== 'negative');
  if (spec.kind === 'noFigure' || (lower ?? 0) < 0 || (upper !== undefined && upper <= 0)) {
    faults.push(wrong('noAngle', 'Torque then angle needs an angle above zero.'));
  }
  if ((lower ?? upper ?? 0) > 360) {
    faults.push(doubtful('overOneTurn', 'More than one whole turn after the snug torque.'));
  }
  return faults;
};

/** The torque that a pass is set to, N·m: target, else the middle, else the only limit. */
const passTorque = (tightening: Pass['tightening']): number | undefined =>
  tightening.kind === 'byFeel'
    ? undefined
    : nominal(tightening.kind === 'torque' ? tightening.torque : tightening.snugTorque);

/** What a specification aims at, canonical unit: target, else the middle, else the only limit. */
export const nominal = (spec: Specification): number | undefined => {
  const { lower, upper, target } = toleranceInterval(spec) ?? {};
  if (target !== undefined) return target;
  if (lower !== undefined && upper !== undefined) return (lower + upper) / 2;
  return lower ?? upper;
};
