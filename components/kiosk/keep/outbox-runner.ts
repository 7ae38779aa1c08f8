import type { JobEvent, JobState } from '@/lib/job';
import {
  onTopOf,
  openOutbox,
  outboxTransition,
  reconcile,
  type Conflict,
  type Delivery,
  type Outbox,
  type OutboxEffect,
  type OutboxInput,
  type SetAside,
  type StoredJob,
} from '@/lib/outbox';
import { ok, type Result } from '@/lib/result';
import type { KioskDisk } from './disk';

/** What the screen shows of the queue. */
export interface OutboxView {
  /** Done here and not yet acknowledged by the store. */
  readonly count: number;
  /** When the first of them was done. */
  readonly since: string | undefined;
  /** The server was not reached when it was last tried. */
  readonly cutOff: boolean;
  /** What the server said of its own trouble. */
  readonly trouble: string | undefined;
  /** Somebody must say what becomes of what waits. */
  readonly conflict: Conflict | undefined;
}

export const nothingWaits: OutboxView = {
  count: 0,
  since: undefined,
  cutOff: false,
  trouble: undefined,
  conflict: undefined,
};

export interface RunnerParts {
  readonly job: string;
  readonly disk: KioskDisk;
  readonly deliver: (events: readonly JobEvent[]) => Promise<Delivery>;
  readonly readRecord: () => Promise<Result<StoredJob, string>>;
  readonly wait: (ms: number) => Promise<void>;
  readonly onChange: (view: OutboxView) => void;
  readonly onSignOnNeeded: () => void;
  /** What waits was put on top of what others wrote: this is the job now. */
  readonly onJob: (job: JobState) => void;
  /** The kiosk's own disk fails: what is done is not safe until the store has it. */
  readonly onDiskTrouble: () => void;
}

/** Carries out what the queue of one job wants, in order; a new one goes on where the disk says the last one was. */
export class OutboxRunner {
  readonly #parts: RunnerParts;
  #outbox: Outbox;
  #conflict: Conflict | undefined;
  #stopped = false;
  #looking = false;
  /** What is written to the disk is written one after the other, and sent only then. */
  #writing: Promise<unknown> = Promise.resolve();

  constructor(parts: RunnerParts, waiting: readonly JobEvent[] = []) {
    this.#parts = parts;
    this.#outbox = openOutbox(waiting);
  }

  get view(): OutboxView {
    const { waiting, failures, trouble } = this.#outbox;
    return {
      count: waiting.length,
      since: waiting[0]?.at,
      cutOff: failures > 0,
      trouble,
      conflict: this.#conflict,
    };
  }

  push(events: readonly JobEvent[]): void {
    this.#take({ kind: 'add', events });
  }

  /** After somebody signed on again, or the network is said to be back. */
  resume(): void {
    this.#take({ kind: 'again' });
  }

  /** A person wants what the store said no to tried once more. */
  tryAgain(): void {
    this.#settle(this.#outbox.waiting);
  }

  stop(): void {
    this.#stopped = true;
  }

  /** A person has seen both sides and puts what was done here on top. Tells why where the rules do not allow it. */
  putOnTop(): Result<void, string> {
    if (this.#conflict === undefined) return ok(undefined);
    const onTop = onTopOf(this.#conflict.job, this.#outbox.waiting);
    if (!onTop.ok) return onTop;
    this.#settle(onTop.value.events);
    this.#parts.onJob(onTop.value.job);
    return ok(undefined);
  }

  /**
   * A person has seen both sides and goes on with the job as the store has it. What was done here stays on the disk;
   * `instead` says so in the job, and `job` is the job after that.
   */
  setAside(aside: SetAside, instead: readonly JobEvent[], job: JobState): void {
    const mine = this.#outbox.waiting;
    this.#write(() => this.#parts.disk.putAside({ ...aside, mine }, instead));
    this.#settle(instead);
    this.#parts.onJob(job);
  }

  #settle(waiting: readonly JobEvent[]): void {
    this.#conflict = undefined;
    this.#take({ kind: 'settle', waiting });
  }

  #take(input: OutboxInput): void {
    if (this.#stopped) return;
    const { outbox, effects } = outboxTransition(this.#outbox, input);
    this.#outbox = outbox;
    for (const effect of effects) this.#carryOut(effect);
    this.#parts.onChange(this.view);
  }

  #write(task: () => Promise<void>): void {
    this.#writing = this.#writing.then(task).catch(() => {
      this.#parts.onDiskTrouble();
    });
  }

  #carryOut(effect: OutboxEffect): void {
    const { disk, deliver, wait, onSignOnNeeded } = this.#parts;
    switch (effect.kind) {
      case 'keep':
        this.#write(() => disk.keepWaiting(effect.events));
        return;
      case 'stored':
        this.#write(() => disk.keepStored(effect.events));
        return;
      case 'keepInstead':
        this.#write(() => disk.keepInstead(effect.of, effect.events));
        return;
      case 'send':
        void this.#writing
          .then(() => deliver(effect.events))
          .then((delivery) => {
            this.#take({ kind: 'answer', attempt: effect.attempt, delivery });
          });
        return;
      case 'wait':
        void wait(effect.ms).then(() => {
          this.#take({ kind: 'again' });
        });
        return;
      case 'askSignOn':
        onSignOnNeeded();
        return;
      case 'look':
        void this.#look(effect.message);
        return;
    }
  }

  async #look(message: string | undefined): Promise<void> {
    if (this.#looking) return;
    this.#looking = true;
    const record = await this.#parts.readRecord();
    this.#looking = false;
    if (this.#stopped) return;
    const compared = record.ok ? reconcile(record.value, this.#outbox.waiting, message) : record;
    if (!record.ok || !compared.ok) {
      this.#take({ kind: 'lookFailed' });
      return;
    }
    const { job, disk } = this.#parts;
    this.#write(() => disk.keepRecord(job, record.value));
    if (compared.value.kind === 'goOn') this.#goOn(compared.value.waiting, compared.value.job);
    else {
      this.#conflict = compared.value.conflict;
      this.#take({ kind: 'leaveToPerson' });
    }
  }

  #goOn(now: readonly JobEvent[], after: JobState): void {
    const { waiting } = this.#outbox;
    this.#settle(now);
    const seqOf = new Map(waiting.map(({ id, seq }) => [id, seq]));
    const moved = now.some(({ id, seq }) => seqOf.get(id) !== seq);
    if (moved || now.length === 0) this.#parts.onJob(after);
  }
}
