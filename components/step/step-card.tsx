import type { Step } from '@/lib/procedure';
import { CautionBands } from './caution-band';
import { OrientationNote } from './orientation-note';
import { StepAsks, type AskedThing } from './step-asks';
import { StepFlags, stepFlags } from './step-flags';

/** One step: cautions first, then the one instruction as large as it is read from the vehicle. */
export function StepCard({
  step,
  applies = [],
  asked = [],
}: {
  readonly step: Step;
  /** What is put on threads or faces in this step: "Thread-locker, medium: crank pulley bolt". */
  readonly applies?: readonly string[];
  /** What it asks besides its values; empty where that stands elsewhere. */
  readonly asked?: readonly AskedThing[];
}) {
  return (
    <article aria-label={step.title} className="flex flex-col gap-3">
      <CautionBands cautions={step.cautions} />
      <p className="text-read font-bold" data-value="instruction">
        {step.instruction}
      </p>
      <StepFlags flags={stepFlags(step, applies)} />
      {step.orientation === undefined ? null : <OrientationNote text={step.orientation} />}
      <StepAsks asked={asked} />
    </article>
  );
}
