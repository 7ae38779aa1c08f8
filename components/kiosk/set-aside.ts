import { applyEvent, writeEvent, type JobEvent, type JobState, type Writing } from '@/lib/job';
import { notesOf, type Conflict, type SetAside } from '@/lib/outbox';
import { clockText } from '../design/duration';
import type { SignedOn } from './link';

/** What setting a conflict's own side aside comes to. */
export interface Aside {
  readonly aside: SetAside;
  /** Says in the job what was set aside. Empty where the job takes nothing from here. */
  readonly instead: readonly JobEvent[];
  /** The job as the store has it, with `instead` on top. */
  readonly job: JobState;
}

/** Made by whoever is signed on, at their kiosk. */
export const asideOf = (
  conflict: Conflict,
  { person, device }: SignedOn,
  env: { readonly now: string; readonly newId: () => string },
): Aside => {
  const { mine, theirs, message } = conflict;
  const writing: Writing = {
    ...env,
    actor: person.id,
    role: person.role,
    device,
    input: { by: 'touch' },
  };
  let { job } = conflict;
  const instead: JobEvent[] = [];
  // What the server says no to, it would say no to as a note as well.
  for (const happening of message === undefined ? notesOf(conflict, clockText) : []) {
    const event = writeEvent(job, happening, writing);
    const after = applyEvent(job, event);
    if (!after.ok) break;
    job = after.value;
    instead.push(event);
  }
  const aside = {
    id: env.newId(),
    job: job.job,
    name: `${job.vehicle.plate} · ${job.revision.title}`,
    at: env.now,
    by: person.id,
    mine,
    theirs,
    ...(message === undefined ? {} : { message }),
  };
  return { aside, instead, job };
};
