/** Does jobs strictly one after the other, so that what is decided depends on the sound alone and not on timing. */
export class JobLine {
  readonly #jobs: (() => Promise<void>)[] = [];
  readonly #onError: (error: unknown) => void;
  #busy = false;

  constructor(onError: (error: unknown) => void) {
    this.#onError = onError;
  }

  get waiting(): number {
    return this.#jobs.length;
  }

  add(job: () => Promise<void>): void {
    this.#jobs.push(job);
    if (!this.#busy) void this.#run();
  }

  async #run(): Promise<void> {
    this.#busy = true;
    try {
      for (let job = this.#jobs.shift(); job !== undefined; job = this.#jobs.shift()) await job();
    } catch (error) {
      this.#jobs.length = 0;
      this.#onError(error);
    }
    this.#busy = false;
  }
}
