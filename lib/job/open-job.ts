import { ok, type Result } from '../result';
import { comesWithKit, type FastenerGroup, type Revision } from '../procedure';
import type { JobEvent } from './event';
import { refuse } from './refuse';
import type { FastenerState, JobState, PartState, Refusal, StepState } from './state';

const from = <In, T>(all: readonly In[], entry: (one: In) => readonly [string, T]) =>
  Object.fromEntries(all.map(entry));

const freshStep: StepState = {
  status: 'open',
  ready: false,
  spentMs: 0,
  reopened: 0,
  openedSeq: 1,
};

const freshPart = (where: PartState['where']): PartState => ({ where, replacementDue: false });

const freshFastener = (revision: Revision, group: FastenerGroup): FastenerState =>
  comesWithKit(revision, group.id)
    ? { stage: 'off', threadLockerDue: group.threadLocker !== undefined, replacementDue: false }
    : { stage: 'untouched', threadLockerDue: false, replacementDue: false };

/** The state of a job just opened on a published revision. */
export const openJob = (revision: Revision, event: JobEvent): Result<JobState, Refusal> => {
  const { happening } = event;
  if (happening.type !== 'jobOpened')
    return refuse('notOpened', 'The job is not open yet: open it first.');
  if (event.seq !== 1) return refuse('sequence', 'Opening is the first event of a job.');
  if (happening.procedure !== revision.procedure || happening.revision !== revision.revision)
    return refuse('wrongRevision', 'The job was opened on another revision of the procedure.');
  const first = revision.steps.find((step) => step.after.length === 0) ?? revision.steps[0];
  if (first === undefined) return refuse('unknownStep', 'The procedure has no steps.');
  return ok({
    job: event.job,
    revision,
    phase: 'running',
    seq: 1,
    vehicle: happening.vehicle,
    bay: happening.bay,
    openedAt: event.at,
    openedBy: event.actor,
    lastAt: event.at,
    currentStep: first.id,
    clockSince: event.at,
    steps: from(revision.steps, (step) => [step.id, freshStep]),
    parts: from(revision.parts, (part) => [part.id, freshPart(part.starts)]),
    fasteners: Object.fromEntries(
      revision.groups.flatMap((group) =>
        group.fasteners.map((f) => [f.id, freshFastener(revision, group)] as const),
      ),
    ),
    fluids: from(revision.fluids, (fluid) => [fluid.id, { state: 'in' }]),
    kit: from(revision.kit, (item) => [item.id, { used: 0, leftOver: 0, extra: 0 }]),
    readings: [],
    answers: [],
    deviations: [],
    signatures: [],
    workers: [],
  });
};
