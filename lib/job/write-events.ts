import type { Role } from '../people';
import { ok, type Result } from '../result';
import { applyEvent } from './apply-event';
import type { Happening, Input, JobEvent } from './event';
import type { JobState, Refusal } from './state';

/** Who writes, where, when and how. */
export interface Writing {
  /** RFC 3339 with offset. */
  readonly now: string;
  readonly newId: () => string;
  readonly actor: string;
  readonly role: Role;
  readonly device: string;
  readonly input: Input;
}

/** The next event of a job; of one that is not opened yet, `seq` is 0. Whether the rules allow it is not asked. */
export const writeEvent = (
  { job, seq }: Pick<JobState, 'job' | 'seq'>,
  happening: Happening,
  { now, newId, actor, role, device, input }: Writing,
): JobEvent => ({
  format: 1,
  id: newId(),
  job,
  seq: seq + 1,
  at: now,
  actor,
  role,
  device,
  input,
  happening,
});

/** An event for each happening, and the job after them: all of them, or the refusal of the first that may not be. */
export const writeEvents = (
  job: JobState,
  happenings: readonly Happening[],
  writing: Writing,
): Result<{ readonly events: readonly JobEvent[]; readonly job: JobState }, Refusal> => {
  const events: JobEvent[] = [];
  let after = job;
  for (const happening of happenings) {
    const event = writeEvent(after, happening, writing);
    const applied = applyEvent(after, event);
    if (!applied.ok) return applied;
    after = applied.value;
    events.push(event);
  }
  return ok({ events, job: after });
};
