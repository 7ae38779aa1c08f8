import { formatQuantity, formatWindow, type Unit } from '../quantity';
import { err, ok, type Result } from '../result';
import { nominal } from './check-tightening';
import { negative, type OutOfDomain } from './domain';
import { specificationQuantity, toleranceInterval, type Specification } from './specification';
import type { ToleranceInterval } from './specification';

/** A self-locking nut resists before it seats. What that takes is measured, and comes on top of the sheet's figure. */
export interface PrevailingTorque {
  /** The sheet's torque, without the resistance of the nut. */
  readonly specified: Specification;
  /** What the nut may take to turn before it seats: too little no longer locks, too much has spoilt a thread. */
  readonly allowed: Specification;
  readonly measuredNm: number;
}

export interface SetWithPrevailing {
  /** What to set on the wrench, N·m. */
  readonly setNm: number;
  /** The sheet's window moved up by the measured torque, N·m. */
  readonly interval: ToleranceInterval;
  readonly explain: string;
}

export type PrevailingProblem =
  | OutOfDomain
  | {
      readonly code: 'tooLoose' | 'tooStiff' | 'noFigure' | 'wrongQuantity';
      readonly message: string;
    };

/**
 * Set value = specified + measured prevailing torque, after the measured one was found within its limits.
 * Common practice for self-locking nuts where the sheet gives the torque without it, no source; a sheet whose figure
 * already holds it must not come here.
 */
export const addPrevailing = (
  { specified, allowed, measuredNm }: PrevailingTorque,
  unit: Unit = 'N.m',
): Result<SetWithPrevailing, PrevailingProblem> => {
  const outside = negative({ 'prevailing torque': measuredNm });
  if (outside) return err(outside);
  if ([specified, allowed].some((spec) => specificationQuantity(spec) !== 'torque')) {
    return err({ code: 'wrongQuantity', message: 'Both specifications must be torques.' });
  }
  const limits = toleranceInterval(allowed) ?? {};
  const measured = formatQuantity(measuredNm, unit);
  if (measuredNm < (limits.lower ?? 0)) {
    return err({
      code: 'tooLoose',
      message: `It turns at ${measured}, allowed is ${formatWindow(limits, unit)}: it no longer locks, take a new nut.`,
    });
  }
  if (measuredNm > (limits.upper ?? Number.POSITIVE_INFINITY)) {
    return err({
      code: 'tooStiff',
      message: `It turns only at ${measured}, allowed is ${formatWindow(limits, unit)}: look at both threads before going on.`,
    });
  }
  const interval = toleranceInterval(specified);
  const aim = nominal(specified);
  if (interval === undefined || aim === undefined) {
    return err({ code: 'noFigure', message: 'The sheet gives no torque to add it to.' });
  }
  const setNm = aim + measuredNm;
  const raised = negative({ 'set value': setNm });
  if (raised) return err(raised);
  const { lower, upper, target } = interval;
  return ok({
    setNm,
    interval: {
      ...(lower === undefined ? {} : { lower: lower + measuredNm }),
      ...(upper === undefined ? {} : { upper: upper + measuredNm }),
      ...(target === undefined ? {} : { target: target + measuredNm }),
    },
    explain: `${formatQuantity(aim, unit)} specified + ${measured} to turn the nut = ${formatQuantity(setNm, unit)}`,
  });
};
