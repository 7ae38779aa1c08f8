import type { JobState } from '../job';

/** States of the jobs written to last. Only a cache: each follows from the events of its job and may be dropped. */
export interface JobCache {
  /** The state of a job after its event `seq`, if it is at hand. */
  get(job: string, seq: number): JobState | undefined;
  put(state: JobState): void;
}

/** Keeps the states of at most `size` jobs. */
export const jobCache = (size: number): JobCache => {
  const states = new Map<string, JobState>();
  return {
    get(job, seq) {
      const state = states.get(job);
      return state?.seq === seq ? state : undefined;
    },
    put(state) {
      states.delete(state.job);
      states.set(state.job, state);
      for (const oldest of states.keys()) {
        if (states.size <= size) break;
        states.delete(oldest);
      }
    },
  };
};
