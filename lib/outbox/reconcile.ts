import { replay, type HappeningType, type JobEvent, type JobState } from '../job';
import type { Revision } from '../procedure';
import { err, ok, type Result } from '../result';
import { onTopOf, type OnTop } from './on-top-of';

/** A job as the store has it, whole. */
export interface StoredJob {
  readonly revision: Revision;
  readonly events: readonly JobEvent[];
}

/** What was done here and what is stored instead; a person says which way it goes. Nothing of it is dropped. */
export interface Conflict {
  /** Stored since, by somebody else or at another kiosk; empty where the store just said no. */
  readonly theirs: readonly JobEvent[];
  /** Not stored. */
  readonly mine: readonly JobEvent[];
  /** The job as the store has it. */
  readonly job: JobState;
  /** Mine on top of theirs, or why the rules do not allow it. */
  readonly onTop: Result<OnTop, string>;
  /** What the store said, where it said no to what is done here. */
  readonly message?: string;
}

export type Reconciled =
  /** Nothing is in the way: this is what waits now, and the job after it. */
  | { readonly kind: 'goOn'; readonly waiting: readonly JobEvent[]; readonly job: JobState }
  | { readonly kind: 'conflict'; readonly conflict: Conflict };

/** What is done beside the work, from afar: what was done at the vehicle meanwhile goes on top of it by itself. */
const besideTheWork: ReadonlySet<HappeningType> = new Set<HappeningType>([
  'foremanCalled',
  'foremanAnswered',
  'deviationDecided',
  'looseEndSigned',
  'jobHeld',
  'jobResumed',
  'jobReassigned',
]);

const isBesideTheWork = ({ happening }: JobEvent): boolean => besideTheWork.has(happening.type);

/**
 * Compares what waits here with the job as the store has it. `message`: the store said no to what waits. An error
 * where the stored events make no job.
 */
export const reconcile = (
  { revision, events }: StoredJob,
  waiting: readonly JobEvent[],
  message?: string,
): Result<Reconciled, string> => {
  const replayed = replay(revision, events);
  if (!replayed.ok) return err(replayed.error.message);
  const job = replayed.value;
  const stored = new Set(events.map(({ id }) => id));
  const mine = waiting.filter(({ id }) => !stored.has(id));
  const [first] = mine;
  if (first === undefined) return ok({ kind: 'goOn', waiting: [], job });
  const theirs = events.filter(({ seq }) => seq >= first.seq);
  const onTop = onTopOf(job, mine);
  // The store said no although the rules do not, and nothing has changed: trying again would go round for ever.
  const saidNo = message !== undefined && theirs.length === 0;
  if (onTop.ok && !saidNo && theirs.every(isBesideTheWork))
    return ok({ kind: 'goOn', waiting: onTop.value.events, job: onTop.value.job });
  const conflict = {
    theirs,
    mine,
    job,
    onTop,
    ...(message === undefined ? {} : { message }),
  };
  return ok({ kind: 'conflict', conflict });
};
