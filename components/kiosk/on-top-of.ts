import { applyEvent, type JobEvent, type JobState } from '@/lib/job';

/**
 * What was done here while somebody else wrote to the job, put on top of the job as the store has it: the same events
 * with the numbers that come next, and the job after them. Nothing where there is nothing to put, or where the rules
 * refuse one of them now; then all of it must be done anew, by somebody who has seen what changed.
 */
export const onTopOf = (
  stored: JobState,
  overtaken: readonly JobEvent[],
): { readonly events: readonly JobEvent[]; readonly job: JobState } | undefined => {
  if (overtaken.length === 0) return undefined;
  const events: JobEvent[] = [];
  let job = stored;
  for (const one of overtaken) {
    const event = { ...one, seq: job.seq + 1 };
    const after = applyEvent(job, event);
    if (!after.ok) return undefined;
    job = after.value;
    events.push(event);
  }
  return { events, job };
};
