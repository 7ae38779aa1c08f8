import type { Vehicle } from '@/lib/shop';
import { Glyph } from '../design/glyph';
import { durationText } from '../design/duration';
import { HearingBadge, type HearingView } from './hearing-badge';
import type { OutboxView } from './keep/outbox-runner';
import { NotStored } from './not-stored';
import { StepTitle, type StepTitleProps } from './step-title';
import { JobRule, type RuleStep } from './job-rule';

export interface ProgressHeaderProps {
  readonly vehicle: Vehicle;
  readonly procedure: string;
  readonly steps: readonly RuleStep[];
  readonly jobSpentMs: number;
  readonly stepSpentMs: number;
  readonly openEnds: number;
  readonly person: string;
  readonly outbox: OutboxView;
  readonly foremanCalled: boolean;
  readonly hearing: HearingView;
  readonly step: StepTitleProps;
  readonly onHearing: () => void;
  readonly onLedger: () => void;
  readonly onPerson: () => void;
}

const minute = 60_000;

/** Where the job stands: vehicle, step n of m, time against book time, loose ends, who works, whether it hears. */
export function ProgressHeader(props: ProgressHeaderProps) {
  const { vehicle, steps, openEnds } = props;
  const index = steps.findIndex(({ current }) => current);
  const bookMs = steps.reduce((sum, { bookMinutes }) => sum + bookMinutes, 0) * minute;
  const stepBookMs = (steps[index]?.bookMinutes ?? 0) * minute;
  return (
    <header className="flex flex-col gap-2">
      <div className="flex flex-wrap items-center gap-x-6 gap-y-2">
        <div className="min-w-0 basis-[32rem]">
          <p className="truncate text-glance font-bold">
            {vehicle.plate}
            <span className="ml-4 text-body font-normal">{vehicle.description}</span>
          </p>
          <p className="truncate text-body text-quiet">{props.procedure}</p>
        </div>
        <StepTitle {...props.step} />
        <HearingBadge hearing={props.hearing} onPress={props.onHearing} />
        <button
          type="button"
          onClick={props.onPerson}
          className="flex min-h-glove items-center gap-3 rounded-block border-2 border-edge bg-surface px-4"
        >
          <Glyph name="person" className="text-act" />
          <span className="sr-only">Signed on: </span>
          <span className="max-w-[14rem] truncate">{props.person}</span>
        </button>
        <button
          type="button"
          onClick={props.onLedger}
          className="flex min-h-glove items-center gap-3 rounded-block border-2 border-edge bg-surface px-5"
        >
          <span className="text-read font-bold" data-count="loose-ends">
            {openEnds}
          </span>
          <span className="text-left leading-tight">
            loose
            <br />
            {openEnds === 1 ? 'end' : 'ends'}
          </span>
        </button>
      </div>
      <div className="flex items-center gap-6">
        <p className="shrink-0 text-body">
          <span className="font-bold">
            Step {index + 1} of {steps.length}
          </span>
          <span className="text-quiet">
            {' '}
            · {durationText(props.stepSpentMs)} of {durationText(stepBookMs)}
          </span>
        </p>
        <div className="min-w-0 grow">
          <JobRule steps={steps} spentMinutes={props.jobSpentMs / minute} />
        </div>
        <NotStored outbox={props.outbox} />
        {props.foremanCalled ? (
          <p role="status" className="flex items-center gap-2 shrink-0 text-body font-bold">
            <Glyph name="call" className="text-act" />
            Foreman called
          </p>
        ) : null}
        <p className="shrink-0 text-body text-quiet">
          Job {durationText(props.jobSpentMs)} of {durationText(bookMs)}
        </p>
      </div>
    </header>
  );
}
