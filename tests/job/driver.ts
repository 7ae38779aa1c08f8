import { applyEvent, openJob, type Happening, type JobEvent, type JobState } from '@/lib/job';
import type { Refusal } from '@/lib/job';
import type { Revision } from '@/lib/procedure';
import type { Result } from '@/lib/result';

export const jobId = '00000000-0000-4000-8000-0000000000aa';

/** The id of the event with that sequence number. */
export const eventId = (seq: number): string =>
  `00000000-0000-4000-8000-${String(seq).padStart(12, '0')}`;

const startMs = Date.parse('2026-03-02T08:00:00Z');

/** Who did it: a mechanic unless said otherwise. */
export type Actor = 'mia' | 'max' | 'fay' | 'fred';
const isForeman = (actor: Actor): boolean => actor === 'fay' || actor === 'fred';

/** One event; a minute after the one before. */
export const event = (seq: number, happening: Happening, actor: Actor = 'mia'): JobEvent => ({
  format: 1,
  id: eventId(seq),
  job: jobId,
  seq,
  at: new Date(startMs + seq * 60_000).toISOString(),
  actor,
  role: isForeman(actor) ? 'foreman' : 'mechanic',
  device: 'kiosk-1',
  input: { by: 'touch' },
  happening,
});

export const opening = (revision: Revision): JobEvent =>
  event(1, {
    type: 'jobOpened',
    procedure: revision.procedure,
    revision: revision.revision,
    vehicle: { plate: 'T 1', description: 'Test rig' },
    bay: 'bay-1',
  });

/** Makes everything in it unchangeable, so that a change of the past throws. */
export const frozen = <T>(value: T): T => {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const inner of Object.values(value)) frozen<unknown>(inner);
  }
  return value;
};

/** A job under test, with the log of what was accepted. */
export class Bay {
  readonly log: JobEvent[] = [];
  state: JobState;

  constructor(readonly revision: Revision) {
    const first = opening(frozen(revision));
    const opened = openJob(revision, first);
    if (!opened.ok) throw new Error(opened.error.message);
    this.log.push(first);
    this.state = frozen(opened.value);
  }

  /** Tries an event as the next one; only an accepted one is kept. */
  try(happening: Happening, actor: Actor = 'mia'): Result<JobState, Refusal> {
    const next = frozen(event(this.state.seq + 1, happening, actor));
    const after = applyEvent(this.state, next);
    if (after.ok) {
      this.state = frozen(after.value);
      this.log.push(next);
    }
    return after;
  }

  /** What must be accepted; gives the event's id. */
  does(happening: Happening, actor: Actor = 'mia'): string {
    const after = this.try(happening, actor);
    if (!after.ok) throw new Error(`${happening.type} refused: ${after.error.message}`);
    return eventId(this.state.seq);
  }

  /** The code of the refusal, or "accepted". */
  refused(happening: Happening, actor: Actor = 'mia'): Refusal['code'] | 'accepted' {
    const after = this.try(happening, actor);
    return after.ok ? 'accepted' : after.error.code;
  }

  begin(step: string): void {
    if (this.state.currentStep !== step) this.does({ type: 'stepBegun', step });
  }
}
