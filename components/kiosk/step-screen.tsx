'use client';
import { currentStep, type KioskState } from '@/lib/kiosk';
import { stepNumber } from '@/lib/procedure';
import { DrawingView } from '../step/drawing-view';
import { Figure } from '../step/figure';
import { NextPreview } from '../step/next-preview';
import { StepCard } from '../step/step-card';
import { OrderStrip } from './order-strip';
import { HeardStrip } from './heard-strip';
import { currentFigure, otherFigures, stepApplies, stepDrawing, stepMarks } from './step-view';

/** The step itself: what to do and to what value on the left, where on the right. */
export function StepScreen({
  state,
  next,
  onChoose,
}: {
  readonly state: KioskState;
  readonly next: { readonly number: number; readonly title: string } | undefined;
  readonly onChoose: (fastener: string) => void;
}) {
  const { job } = state;
  const step = currentStep(job);
  const figure = currentFigure(job, step);
  const others = otherFigures(job, step);
  const drawing = stepDrawing(job, step);
  const marks = stepMarks(job, step, state.chosen);
  const ordered = marks.filter(({ ordinal }) => ordinal !== undefined);
  const noun = job.revision.groups.find(({ fasteners }) =>
    fasteners.some(({ id }) => id === ordered[0]?.fastener),
  )?.noun;
  return (
    <div
      className={`grid h-full min-h-0 gap-6 ${drawing === undefined ? '' : 'wide:grid-cols-[minmax(0,4fr)_minmax(0,3fr)]'}`}
    >
      <div className="flex min-h-0 flex-col gap-4">
        <div
          className="min-h-0 grow overflow-y-auto pr-2"
          tabIndex={0}
          role="group"
          aria-label="The step"
        >
          <StepCard
            step={step}
            number={stepNumber(job.revision, step.id)}
            status={job.steps[step.id]?.status ?? 'open'}
            applies={stepApplies(job, step)}
          />
        </div>
        {figure === undefined ? null : (
          <Figure
            label={figure.label}
            specification={figure.specification}
            reading={figure.reading}
          />
        )}
        {others.length === 0 ? null : (
          <p className="text-glance text-quiet">Also here: {others.join(' · ')}</p>
        )}
        <HeardStrip outcome={state.outcome} />
        <NextPreview next={next} />
      </div>
      {drawing === undefined ? null : (
        <div className="flex min-h-0 flex-col gap-3 rounded-block border-2 border-line bg-surface p-4">
          <DrawingView drawing={drawing} marks={marks} />
          {ordered.length === 0 || noun === undefined ? null : (
            <OrderStrip noun={noun} marks={ordered} onChoose={onChoose} />
          )}
        </div>
      )}
    </div>
  );
}
