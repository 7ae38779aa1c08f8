import { applyEvent, type JobEvent, type JobState } from '../job';
import { err, ok, type Result } from '../result';

/** What was done here, on top of a job that has gone on: the same events with the numbers that come next. */
export interface OnTop {
  readonly events: readonly JobEvent[];
  readonly job: JobState;
}

/**
 * Puts what was done here, while somebody else wrote to the job, on top of the job as the store has it. Where the
 * rules refuse one of the events now, their reason; then none of it can go on top.
 */
export const onTopOf = (stored: JobState, mine: readonly JobEvent[]): Result<OnTop, string> => {
  const events: JobEvent[] = [];
  let job = stored;
  for (const one of mine) {
    const event = { ...one, seq: job.seq + 1 };
    const after = applyEvent(job, event);
    if (!after.ok) return err(after.error.message);
    job = after.value;
    events.push(event);
  }
  return ok({ events, job });
};
