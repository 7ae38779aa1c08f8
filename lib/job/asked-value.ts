import { addPrevailing } from '../fastening/prevailing';
import type { Specification } from '../fastening/specification';
import { askOf, groupOf, passOf, stepOf, type ValueAsk } from '../procedure';
import { askSpecification, stands } from './asks';
import type { JobState, Reading } from './state';

/** What a self-locking nut adds to its torque. */
export type Prevailing =
  | {
      readonly kind: 'added';
      /** The reading that was added. */
      readonly reading: Reading;
      /** What to set on the wrench, N·m. */
      readonly setNm: number;
      readonly explain: string;
    }
  /** Not measured yet, or the nut will not do: the torque that it must get is not known. */
  | { readonly kind: 'open' | 'unfit'; readonly explain: string };

export interface AskedValue {
  /** What the value must be on this job: the sheet's, moved up by what a self-locking nut was measured to take. */
  readonly specification: Specification;
  /** Absent: nothing comes on top of the sheet's figure. */
  readonly prevailing?: Prevailing;
}

/** What was measured of the nut: for that fastener, or once for all. */
const nutReading = (
  job: JobState,
  groupId: string,
  passId: string,
  fastener: string | undefined,
): Reading | undefined =>
  job.readings.findLast((reading) => {
    if (!stands(reading)) return false;
    if (reading.fastener !== undefined && reading.fastener !== fastener) return false;
    const step = stepOf(job.revision, reading.step);
    const ask = step && askOf(step, reading.ask);
    return (
      ask?.kind === 'value' &&
      ask.of.kind === 'pass' &&
      ask.of.measure === 'prevailing' &&
      ask.of.group === groupId &&
      ask.of.pass === passId
    );
  });

/** What a value must be now, for one fastener where the ask wants one value each. */
export const askedValue = (
  job: JobState,
  ask: ValueAsk,
  fastener: string | undefined,
): AskedValue => {
  const specification = askSpecification(job.revision, ask);
  const { of } = ask;
  if (of.kind !== 'pass' || of.measure !== 'torque') return { specification };
  const group = groupOf(job.revision, of.group);
  const allowed = group && passOf(group, of.pass)?.prevailing;
  if (allowed === undefined || specification.kind === 'noFigure') return { specification };
  const reading = nutReading(job, of.group, of.pass, fastener);
  if (reading === undefined) {
    const explain = 'What it takes to turn before it seats comes on top: measure that first.';
    return { specification, prevailing: { kind: 'open', explain } };
  }
  const added = addPrevailing(
    { specified: specification, allowed, measuredNm: reading.canonical },
    specification.unit,
  );
  return added.ok
    ? {
        specification: added.value.specification,
        prevailing: {
          kind: 'added',
          reading,
          setNm: added.value.setNm,
          explain: added.value.explain,
        },
      }
    : { specification, prevailing: { kind: 'unfit', explain: added.error.message } };
};
