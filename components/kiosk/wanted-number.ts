import type { Specification } from '@/lib/fastening';
import { askSpecification, type JobState } from '@/lib/job';
import { allWants, openWants, wantLabel, type Want } from '@/lib/kiosk';
import type { Step } from '@/lib/procedure';
import { quantityOf, type Unit } from '@/lib/quantity';
import { nextFastener } from './step-marks';

/** A number that the value pad can take. */
export interface WantedNumber {
  readonly want: Want;
  readonly label: string;
  /** The sheet's unit first; for torque also the other one in use. None for a count. */
  readonly units: readonly Unit[];
}

const padUnits = (specification: Specification): readonly Unit[] => {
  const other: Unit = specification.unit === 'N.m' ? '[lbf_av].[ft_i]' : 'N.m';
  return quantityOf(specification.unit) === 'torque'
    ? [specification.unit, other]
    : [specification.unit];
};

const takesNumber = ({ ask }: Want): boolean => ask.kind === 'value' || ask.kind === 'count';

/** The number that a press on the value pad stands for, if the step takes one. */
export const wantedNumber = (
  job: JobState,
  step: Step,
  chosen: string | undefined,
): WantedNumber | undefined => {
  const next = nextFastener(job, step, chosen);
  const open = openWants(job, step).filter(takesNumber);
  const want =
    allWants(job, step).find((one) => chosen !== undefined && one.fastener === chosen) ??
    open.find(({ fastener }) => fastener === next) ??
    open[0];
  if (want === undefined) return undefined;
  return {
    want,
    label: wantLabel(job, want),
    units: want.ask.kind === 'value' ? padUnits(askSpecification(job.revision, want.ask)) : [],
  };
};
