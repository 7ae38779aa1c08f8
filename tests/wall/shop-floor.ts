import type { JobState } from '@/lib/job';
import { bayCard, type BayCard, type BayFacts } from '@/lib/wall';
import { Bay } from '../job/driver';
import { doSteps } from '../job/hands';
import { lidJob } from '../job/lid-procedure';

export const why = { text: 'so it is' };

/** The lid is off; nothing was unusual. */
export const underWay = (): Bay => {
  const bay = new Bay(lidJob);
  doSteps(bay, 'drain', 'open-lid');
  return bay;
};

/** Two minutes after the job's last event. */
export const soonAfter = (state: JobState): number => Date.parse(state.lastAt) + 120_000;

export const cardOf = (job: JobState | undefined, facts: Partial<BayFacts> = {}): BayCard => {
  const nowMs = job === undefined ? Date.parse('2026-03-02T09:00:00Z') : soonAfter(job);
  return bayCard({
    bay: { id: 'bay-1', name: 'Bay 1' },
    job,
    presence: { seenMs: nowMs },
    watchingSinceMs: nowMs - 3_600_000,
    earlier: {},
    nameOf: (person) => person.toUpperCase(),
    nowMs,
    ...facts,
  });
};
