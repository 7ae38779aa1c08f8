import type { JobState } from '../job';
import type { Store } from '../store';
import { earlierStepMinutes, stepMinutes } from '../store/step-times';
import type { StepTimes } from '../wall';
import { log } from './log';

/** From so many jobs the times of a step are told; more would tell of another season. */
const mostJobs = 12;

const keyOf = ({ revision }: JobState): string =>
  `${revision.procedure} ${String(revision.revision)}`;

const collect = (jobs: readonly Readonly<Record<string, number>>[]): StepTimes => {
  const times: Record<string, number[]> = {};
  for (const job of jobs)
    for (const [step, minutes] of Object.entries(job)) (times[step] ??= []).push(minutes);
  return times;
};

/** How long earlier jobs took, by revision; read once, in the background, and kept up to date. */
export class WallTimes {
  readonly #store: Store;
  readonly #onRead: () => void;
  readonly #jobs = new Map<string, readonly Readonly<Record<string, number>>[]>();
  readonly #times = new Map<string, StepTimes>();

  constructor(store: Store, onRead: () => void) {
    this.#store = store;
    this.#onRead = onRead;
  }

  /** What is known by now; what is not is asked for. */
  of(state: JobState): StepTimes {
    const key = keyOf(state);
    if (!this.#jobs.has(key)) {
      this.#jobs.set(key, []);
      const { procedure, revision } = state.revision;
      earlierStepMinutes(this.#store, procedure, revision, mostJobs).then(
        (jobs) => {
          if (jobs.length === 0) return;
          this.#keep(key, [...(this.#jobs.get(key) ?? []), ...jobs]);
          this.#onRead();
        },
        (error: unknown) => {
          log.error({ err: error }, 'earlier step times could not be read');
        },
      );
    }
    return this.#times.get(key) ?? {};
  }

  closed(state: JobState): void {
    const key = keyOf(state);
    this.#keep(key, [stepMinutes(state), ...(this.#jobs.get(key) ?? [])]);
  }

  #keep(key: string, jobs: readonly Readonly<Record<string, number>>[]): void {
    const kept = jobs.slice(0, mostJobs);
    this.#jobs.set(key, kept);
    this.#times.set(key, collect(kept));
  }
}
