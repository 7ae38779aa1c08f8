'use client';
import { useState } from 'react';
import { v7 as newId } from 'uuid';
import type { JobState } from '@/lib/job';
import type { Person } from '@/lib/people';
import { foremanEvents, type Decision } from './foreman-acts';
import type { KioskLink } from './link';

export interface ForemanVisit {
  readonly problem: string | undefined;
  readonly busy: boolean;
  readonly decide: (
    foreman: Person,
    pin: string,
    decisions: readonly Decision[],
    reason: string,
  ) => void;
}

/** Sends a foreman's decisions with their PIN; the job goes on with them once the store has taken them. */
export const useForeman = (
  job: JobState,
  device: string,
  link: KioskLink,
  onDecided: (job: JobState) => void,
): ForemanVisit => {
  const [problem, setProblem] = useState<string>();
  const [busy, setBusy] = useState(false);
  const decide: ForemanVisit['decide'] = (foreman, pin, decisions, reason) => {
    const env = { now: new Date().toISOString(), newId: () => newId(), device };
    const made = foremanEvents(job, foreman, decisions, reason, env);
    if (!made.ok) {
      setProblem(made.error);
      return;
    }
    const { events, job: after } = made.value;
    setBusy(true);
    setProblem(undefined);
    void link.foreman(job.job, foreman.id, pin, events).then((sent) => {
      setBusy(false);
      if (sent.ok) onDecided(after);
      else setProblem(sent.error);
    });
  };
  return { problem, busy, decide };
};
