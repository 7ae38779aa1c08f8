'use client';
import { spentMs, type JobState } from '@/lib/job';
import { currentStep } from '@/lib/kiosk';
import { unsigned } from '@/lib/ledger';
import { stepNumber } from '@/lib/procedure';
import type { HearingView } from './hearing-badge';
import type { OutboxView } from './keep/outbox-runner';
import { ProgressHeader } from './progress-header';
import { previewNext } from './step-words';
import { useNow } from './use-now';

/** The header with the clock in it, so that nothing else is drawn again when only time has passed. */
export function JobHeader({
  job,
  person,
  outbox,
  hearing,
  onHearing,
  onLedger,
  onPerson,
}: {
  readonly job: JobState;
  readonly person: string;
  readonly outbox: OutboxView;
  readonly hearing: HearingView;
  readonly onHearing: () => void;
  readonly onLedger: () => void;
  readonly onPerson: () => void;
}) {
  const now = useNow(5_000);
  const { steps } = job.revision;
  const step = currentStep(job);
  const at = job.phase === 'running' ? now : job.lastAt;
  return (
    <ProgressHeader
      vehicle={job.vehicle}
      procedure={job.revision.title}
      step={{
        number: stepNumber(job.revision, step.id),
        title: step.title,
        status: job.steps[step.id]?.status ?? 'open',
        next: previewNext(job, step),
      }}
      steps={steps.map(({ id, bookMinutes }) => ({
        id,
        bookMinutes,
        status: job.steps[id]?.status ?? 'open',
        current: id === job.currentStep,
      }))}
      jobSpentMs={steps.reduce((sum, { id }) => sum + spentMs(job, id, at), 0)}
      stepSpentMs={spentMs(job, job.currentStep, at)}
      openEnds={unsigned(job).length}
      person={person}
      outbox={outbox}
      foremanCalled={job.foremanCalledAt !== undefined}
      hearing={hearing}
      onHearing={onHearing}
      onLedger={onLedger}
      onPerson={onPerson}
    />
  );
}
