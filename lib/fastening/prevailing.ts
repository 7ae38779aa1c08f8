import { formatQuantity, formatWindow, fromCanonical, type Unit } from '../quantity';
import { err, ok, type Result } from '../result';
import { nominal } from './check-tightening';
import { negative, type OutOfDomain } from './domain';
import {
  specificationQuantity,
  toleranceInterval,
  type Specification,
  type ToleranceInterval,
} from './specification';

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
  /** The same as a specification, in the sheet's unit. */
  readonly specification: Specification;
  readonly explain: string;
}

export interface NutProblem {
  readonly code: 'tooLoose' | 'tooStiff';
  /** What was measured, what is allowed, and what to do. */
  readonly message: string;
}

export type PrevailingProblem =
  | OutOfDomain
  | NutProblem
  | { readonly code: 'noFigure' | 'wrongQuantity'; readonly message: string };

/** Whether a self-locking nut still locks and does not seize, by what it takes to turn it before it seats. */
export const judgeNut = (
  allowed: Specification,
  measuredNm: number,
  unit: Unit = allowed.unit,
): NutProblem | undefined => {
  const limits = toleranceInterval(allowed) ?? {};
  const slack = Math.max(Math.abs(measuredNm), 1) * 1e-9; // decimals in another unit: a limit reached is kept
  const measured = formatQuantity(measuredNm, unit);
  const window = `allowed is ${formatWindow(limits, unit)}`;
  if (measuredNm < (limits.lower ?? 0) - slack) {
    return {
      code: 'tooLoose',
      message: `It turns at ${measured}, ${window}: it no longer locks, take a new nut.`,
    };
  }
  return measuredNm > (limits.upper ?? Number.POSITIVE_INFINITY) + slack
    ? {
        code: 'tooStiff',
        message: `It turns only at ${measured}, ${window}: look at both threads before going on.`,
      }
    : undefined;
};

/** A specification with all its figures moved up by a torque; one in percent then has the same width in its unit. */
const raisedBy = (spec: Specification, byNm: number): Specification => {
  const by = fromCanonical(byNm, spec.unit);
  switch (spec.kind) {
    case 'target': {
      const { in: as, plus, minus } = spec.tolerance;
      const scale = as === 'percent' ? Math.abs(spec.target) / 100 : 1;
      return {
        ...spec,
        target: spec.target + by,
        tolerance: { in: 'unit', plus: plus * scale, minus: minus * scale },
      };
    }
    case 'range':
      return { ...spec, lower: spec.lower + by, upper: spec.upper + by };
    case 'atLeast':
      return { ...spec, lower: spec.lower + by };
    case 'atMost':
      return { ...spec, upper: spec.upper + by };
    case 'noFigure':
      return spec;
  }
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
  const bad = judgeNut(allowed, measuredNm, unit);
  if (bad !== undefined) return err(bad);
  const specification = raisedBy(specified, measuredNm);
  const interval = toleranceInterval(specification);
  const aim = nominal(specified);
  if (interval === undefined || aim === undefined) {
    return err({ code: 'noFigure', message: 'The sheet gives no torque to add it to.' });
  }
  const setNm = aim + measuredNm;
  const raised = negative({ 'set value': setNm });
  if (raised) return err(raised);
  const measured = formatQuantity(measuredNm, unit);
  return ok({
    setNm,
    interval,
    specification,
    explain: `${formatQuantity(aim, unit)} specified + ${measured} to turn the nut = ${formatQuantity(setNm, unit)}`,
  });
};
