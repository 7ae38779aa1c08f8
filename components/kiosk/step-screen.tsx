'use client';
import {
  nominal,
  toleranceInterval,
  type GeneralFigure,
  type ToleranceInterval,
} from '@/lib/fastening';
import { currentStep, generalForGroup, setOnWrench, type KioskState } from '@/lib/kiosk';
import type { Step } from '@/lib/procedure';
import { provenInterval, type ToolChoice } from '@/lib/metrology';
import { quantityOf } from '@/lib/quantity';
import type { ShopSettings } from '@/lib/shop';
import { DrawingView } from '../step/drawing-view';
import { Figure } from '../step/figure';
import { GeneralNote } from '../step/general-note';
import { StepAsks } from '../step/step-asks';
import { StepCard } from '../step/step-card';
import { NoTool, ToolLine } from '../step/tool-line';
import { HeardStrip } from './heard-strip';
import { currentFigure, otherFigures, type StepFigure } from './step-figures';
import { stepDrawing, stepMarks } from './step-marks';
import { stepApplies, stepAsked } from './step-words';

/** What is measured or set now, and what else is in this step. */
function Figures({
  state,
  tools,
}: {
  readonly state: KioskState;
  readonly tools: ToolChoice | undefined;
}) {
  const step = currentStep(state.job);
  const figure = currentFigure(state.job, step);
  const others = otherFigures(state.job, step);
  if (figure === undefined) return null;
  const { specification } = figure;
  const set = setOnWrench(specification, state.adapter);
  const torque = quantityOf(specification.unit) === 'torque' ? nominal(specification) : undefined;
  return (
    <div className="flex flex-col gap-1">
      <Figure
        label={figure.label}
        specification={specification}
        reading={figure.reading}
        beside={
          <ToolLine choice={tools} setNm={set?.torqueNm ?? torque} drive={set === undefined} />
        }
        proven={set === undefined ? provenWindow(figure, tools) : undefined}
        set={set}
      />
      <Why state={state} />
      {others.length === 0 ? null : (
        <p className="text-body text-quiet">Also here: {others.join(' · ')}</p>
      )}
    </div>
  );
}

/**
 * Where a safety-critical torque must be read to be proven with the best tool. Not for self-locking nuts, where what
 * the nut takes is uncertain as well.
 */
const provenWindow = (
  { group, specification }: StepFigure,
  tools: ToolChoice | undefined,
): ToleranceInterval | undefined => {
  const best = tools?.usable[0]?.uncertainty.expandedNm;
  const interval = toleranceInterval(specification);
  const simple = group?.passes.every(({ prevailing }) => prevailing === undefined) ?? false;
  return best !== undefined && interval !== undefined && simple && group?.safetyCritical === true
    ? provenInterval(interval, best)
    : undefined;
};

/** The one sentence behind a verdict that is no plain "in spec", for the value given last. */
function Why({ state }: { readonly state: KioskState }) {
  const told = state.question === undefined ? state.outcome?.figure : undefined;
  return told === undefined || told.verdict === 'inSpec' || told.verdict === 'noFigure' ? null : (
    <p className="text-body font-bold">{told.sentence}</p>
  );
}

/** For fasteners without a figure, where the shop wants it: beside the step, not in a figure's place. */
const generalOf = ({ job }: KioskState, settings: ShopSettings): GeneralFigure | undefined => {
  const figure = currentFigure(job, currentStep(job));
  return figure?.group === undefined || figure.specification.kind !== 'noFigure'
    ? undefined
    : generalForGroup(job.revision, figure.group, settings);
};

/** Whether the words of a step leave no room for its value beside them; less is left under a line of trouble. */
const isWordy = (step: Step, cramped: boolean): boolean =>
  step.cautions.length + (step.orientation === undefined ? 0 : 1) >= (cramped ? 1 : 2);

/** The step itself: what to do and to what value on the left, where on the right; the value too where words abound. */
export function StepScreen({
  state,
  forming,
  cramped,
  tools,
  settings,
  onChoose,
}: {
  readonly state: KioskState;
  readonly forming: string | undefined;
  /** A line of trouble stands above the step. */
  readonly cramped: boolean;
  readonly tools: ToolChoice | undefined;
  readonly settings: ShopSettings;
  readonly onChoose: (fastener: string) => void;
}) {
  const { job } = state;
  const step = currentStep(job);
  const drawing = stepDrawing(job, step);
  const marks = stepMarks(job, step, state.chosen);
  const ordered = marks.some(({ ordinal }) => ordinal !== undefined);
  const onLeft = drawing !== undefined && (ordered || !isWordy(step, cramped));
  const figures =
    currentFigure(job, step) === undefined ? null : <Figures state={state} tools={tools} />;
  const general = generalOf(state, settings);
  const asked = stepAsked(job, step);
  const asksRight = isWordy(step, cramped) && (drawing !== undefined || figures !== null);
  const beside = drawing !== undefined || figures !== null;
  return (
    <div
      className={`grid h-full min-h-0 gap-6 ${beside ? 'wide:grid-cols-[minmax(0,4fr)_minmax(0,3fr)]' : ''}`}
    >
      <div className="flex min-h-0 flex-col gap-4">
        <div
          className="min-h-0 grow overflow-y-auto pr-2"
          tabIndex={0}
          role="group"
          aria-label="The step"
        >
          <StepCard step={step} applies={stepApplies(job, step)} asked={asksRight ? [] : asked} />
        </div>
        {onLeft ? figures : null}
        <HeardStrip outcome={state.outcome} forming={forming} />
      </div>
      {beside ? (
        <div className="flex min-h-0 flex-col gap-4">
          {drawing === undefined ? null : (
            <div className="flex min-h-0 grow flex-col rounded-block border-2 border-line bg-surface p-4">
              <DrawingView drawing={drawing} marks={marks} onChoose={onChoose} />
            </div>
          )}
          {onLeft ? null : figures}
          <NoTool choice={tools} adapter={state.adapter !== undefined} />
          {general === undefined ? null : <GeneralNote figure={general} />}
          {asksRight ? <StepAsks asked={asked} /> : null}
        </div>
      ) : null}
    </div>
  );
}
