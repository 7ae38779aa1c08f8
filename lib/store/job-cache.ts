import type { JobState } from '../job';

/** Where the record of a job stands: the state after its last event, and the link of that event. */
export interface Standing {
  readonly state: JobState;
  readonly head: string;
}

/** The jobs written to last. Only a cache: each follows from the events of its job and may be dropped. */
export interface JobCache {
  /** How a job stands after its event `seq`, if it is at hand. */
  get(job: string, seq: number): Standing | undefined;
  put(standing: Standing): void;
}

/** Keeps at most `size` jobs. */
export const jobCache = (size: number): JobCache => {
  const kept = new Map<string, Standing>();
  return {
    get(job, seq) {
      const standing = kept.get(job);
      return standing?.state.seq === seq ? standing : undefined;
    },
    put(standing) {
      const { job } = standing.state;
      kept.delete(job);
      kept.set(job, standing);
      for (const oldest of kept.keys()) {
        if (kept.size <= size) break;
        kept.delete(oldest);
      }
    },
  };
};
