/** Does jobs strictly one after the other, so that what is decided depends on the sound alone and not on timing. */
export class JobLine {
  readonly #jobs: (() => Promise<void>)[] = [];
  readonly #onError: (error: unknown) => void;
  readonly #now: () => number;
  #busySinceMs: number | undefined;

  constructor(onError: (error: unknown) => void, now: () => number) {
    this.#onError = onError;
    this.#now = now;
  }

  /** How long the present job has been going on; 0 when there is none. */
  get busyMs(): number {
    return this.#busySinceMs === undefined ? 0 : this.#now() - this.#busySinceMs;
  }

  get waiting(): number {
    return this.#jobs.length;
  }

  add(job: () => Promise<void>): void {
    this.#jobs.push(job);
    if (this.#busySinceMs === undefined) void this.#run();
  }

  async #run(): Promise<void> {
    try {
      for (let job = this.#jobs.shift(); job !== undefined; job = this.#jobs.shift()) {
        this.#busySinceMs = this.#now();
        await job();
      }
    } catch (error) {
      this.#jobs.length = 0;
      this.#onError(error);
    }
    this.#busySinceMs = undefined;
  }
}
