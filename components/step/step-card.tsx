import type { Step } from '@/lib/procedure';
import type { StepState } from '@/lib/job';
import { Glyph } from '../design/glyph';
import { CautionBands } from './caution-band';
import { OrientationNote } from './orientation-note';
import { NextPreview } from './next-preview';
import { StepFlags, stepFlags } from './step-flags';

const statusWords: Readonly<Record<StepState['status'], string>> = {
  open: '',
  done: 'done',
  leftOut: 'left out',
};

/** One step: cautions first, then the one instruction as large as it is read from the vehicle. */
export function StepCard({
  step,
  number,
  status,
  applies = [],
  next,
}: {
  readonly step: Step;
  readonly number: number;
  readonly status: StepState['status'];
  /** What is put on threads or faces in this step: "Thread-locker, medium: crank pulley bolt". */
  readonly applies?: readonly string[];
  /** The step that comes up once this one is done. */
  readonly next: { readonly number: number; readonly title: string } | undefined;
}) {
  return (
    <article aria-labelledby="step-title" className="flex flex-col gap-4">
      <header className="flex items-baseline justify-between gap-5">
        <h1 id="step-title" className="text-glance font-bold text-act">
          <span className="sr-only">Step </span>
          {number}. {step.title}
        </h1>
        {status === 'open' ? null : (
          <p className="flex items-center gap-2 text-glance font-bold text-good">
            <Glyph name={status === 'done' ? 'tick' : 'forward'} />
            {statusWords[status]}
          </p>
        )}
        <NextPreview next={next} />
      </header>
      <CautionBands cautions={step.cautions} />
      <p className="text-read font-bold" data-value="instruction">
        {step.instruction}
      </p>
      {step.orientation === undefined ? null : <OrientationNote text={step.orientation} />}
      <StepFlags flags={stepFlags(step, applies)} />
    </article>
  );
}
