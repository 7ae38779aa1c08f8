import { applyEvent, openJob, type JobEvent, type JobState } from '../job';
import type { Revision } from '../procedure';
import { rowOf, type Row } from './row';

/** A state is kept after so many events: enough to reach any moment quickly, few enough to hold. */
export const snapshotEvery = 250;

/** A job's record, replayed: a row an event, and the state at any of them. */
export interface Timeline {
  readonly events: readonly JobEvent[];
  readonly rows: readonly Row[];
  /** States after event 1, 251, 501 … */
  readonly snapshots: readonly JobState[];
  /** After the last event that could be replayed; nothing where not even the opening could. */
  readonly last: JobState | undefined;
  /** Where the record does not follow from itself: this event is refused, and nothing after it is replayed. */
  readonly stopped?: { readonly seq: number; readonly message: string };
}

const next = (revision: Revision, before: JobState | undefined, event: JobEvent) =>
  before === undefined ? openJob(revision, event) : applyEvent(before, event);

/** Replays a record by the rules of every event. Yields now and then, so that others get their turn; returns the whole. */
export function* replaySlowly(
  revision: Revision,
  events: readonly JobEvent[],
): Generator<undefined, Timeline> {
  const rows: Row[] = [];
  const snapshots: JobState[] = [];
  let last: JobState | undefined;
  for (const [at, event] of events.entries()) {
    const after = next(revision, last, event);
    if (!after.ok)
      return {
        events,
        rows,
        snapshots,
        last,
        stopped: { seq: at + 1, message: after.error.message },
      };
    rows.push(rowOf(last, after.value, event));
    last = after.value;
    if (at % snapshotEvery === 0) snapshots.push(last);
    if (at % 50 === 49) yield undefined;
  }
  return { events, rows, snapshots, last };
}

/** The same at once. */
export const timelineOf = (revision: Revision, events: readonly JobEvent[]): Timeline => {
  const replay = replaySlowly(revision, events);
  for (;;) {
    const turn = replay.next();
    if (turn.done === true) return turn.value;
  }
};

/** The state right after event `seq`, from the nearest one that is kept; nothing where it was not replayed so far. */
export const stateAt = (timeline: Timeline, seq: number): JobState | undefined => {
  if (timeline.last?.seq === seq) return timeline.last;
  if (seq < 1 || seq > timeline.rows.length) return undefined;
  let state = timeline.snapshots[Math.floor((seq - 1) / snapshotEvery)];
  for (const event of timeline.events.slice(state?.seq ?? seq, seq)) {
    if (state === undefined) return undefined;
    const after = applyEvent(state, event);
    state = after.ok ? after.value : undefined;
  }
  return state;
};
