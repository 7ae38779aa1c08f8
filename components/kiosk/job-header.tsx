'use client';
import type { ReactNode } from 'react';
import { spentMs, type JobState } from '@/lib/job';
import { unsigned } from '@/lib/ledger';
import type { HearingView } from './hearing-badge';
import { ProgressHeader } from './progress-header';
import { useNow } from './use-now';

/** The header with the clock in it, so that nothing else is drawn again when only time has passed. */
export function JobHeader({
  job,
  person,
  notStored,
  hearing,
  demo,
  onHearing,
  onLedger,
  onPerson,
}: {
  readonly job: JobState;
  readonly person: string;
  readonly notStored: number;
  readonly hearing: HearingView;
  readonly demo: ReactNode;
  readonly onHearing: () => void;
  readonly onLedger: () => void;
  readonly onPerson: () => void;
}) {
  const now = useNow(5_000);
  const { steps } = job.revision;
  const at = job.phase === 'running' ? now : job.lastAt;
  return (
    <ProgressHeader
      vehicle={job.vehicle}
      procedure={job.revision.title}
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
      notStored={notStored}
      foremanCalled={job.foremanCalledAt !== undefined}
      hearing={hearing}
      demo={demo}
      onHearing={onHearing}
      onLedger={onLedger}
      onPerson={onPerson}
    />
  );
}
