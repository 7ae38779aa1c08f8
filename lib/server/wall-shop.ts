import type { JobState } from '../job';
import { readShop, type Store } from '../store';
import { openJobs, rebuildState } from '../store/job-records';
import type { Shop } from '../shop';
import { bayCard, offlineSinceMs, type BayCard, type Presence } from '../wall';
import { WallTimes } from './wall-times';

/** What all walls of a shop show: the open job and the kiosk of each bay, and which change was the last. */
export class WallShop {
  readonly #store: Store;
  readonly #now: () => Date;
  readonly #onChange: () => void;
  readonly #times: WallTimes;
  readonly #watchingSinceMs: number;
  readonly #jobs = new Map<string, JobState>();
  readonly #presence = new Map<string, Presence>();
  /** With which change each bay is as it is. */
  readonly #versions = new Map<string, number>();
  readonly #cards = new Map<string, BayCard>();
  #shop: Shop | undefined;
  version = 0;

  constructor(store: Store, now: () => Date, onChange: () => void) {
    this.#store = store;
    this.#now = now;
    this.#onChange = onChange;
    this.#watchingSinceMs = now().getTime();
    this.#times = new WallTimes(store, () => {
      this.touchRunning();
    });
  }

  get name(): string {
    return this.#shop?.name ?? '';
  }

  get order(): readonly string[] {
    return this.#shop?.bays.map(({ id }) => id) ?? [];
  }

  /** Reads the shop and its open jobs, where that was not done or somebody else wrote to them. */
  async read(): Promise<void> {
    this.#shop ??= await readShop(this.#store);
    const rows = await openJobs(this.#store.db);
    for (const { id, bay, seq } of rows) {
      const there = this.#jobs.get(bay);
      if (there?.job === id && there.seq >= seq) continue;
      this.stored(await rebuildState(this.#store.db, id));
    }
    const open = new Set(rows.map(({ id }) => id));
    for (const [bay, { job, seq }] of this.#jobs)
      if (!open.has(job) && seq > 0) await this.#dropIfClosed(bay, job);
  }

  async #dropIfClosed(bay: string, job: string): Promise<void> {
    const state = await rebuildState(this.#store.db, job);
    if (state.phase === 'closed' && this.#jobs.get(bay)?.job === job) this.stored(state);
  }

  /** A job has gone on. */
  stored(state: JobState): void {
    const before = [...this.#jobs].find(([, { job }]) => job === state.job);
    if (before !== undefined && before[1].seq >= state.seq) return;
    if (before !== undefined && (before[0] !== state.bay || state.phase === 'closed')) {
      this.#jobs.delete(before[0]);
      this.#touch(before[0]);
    }
    if (state.phase === 'closed') {
      this.#times.closed(state);
      return;
    }
    this.#jobs.set(state.bay, state);
    this.#touch(state.bay);
  }

  /** A kiosk says that it is there. The bay must be one of the shop's. */
  present(bay: string, cannotBeHeard: string | undefined): void {
    const seenMs = this.#now().getTime();
    const before = this.#presence.get(bay);
    const silent =
      cannotBeHeard === undefined
        ? {}
        : {
            cannotBeHeard:
              before?.cannotBeHeard?.why === cannotBeHeard
                ? before.cannotBeHeard
                : { why: cannotBeHeard, sinceMs: seenMs },
          };
    this.#presence.set(bay, { seenMs, ...silent });
    const shown = this.#cards.get(bay)?.kiosk;
    if (shown?.offlineSince !== undefined || shown?.cannotBeHeard !== cannotBeHeard)
      this.#touch(bay);
  }

  /** Bays whose kiosk has fallen silent without anything having been stored. */
  noticeSilence(): void {
    const nowMs = this.#now().getTime();
    for (const [bay, { kiosk }] of [...this.#cards]) {
      const since = offlineSinceMs(this.#presence.get(bay), this.#watchingSinceMs, nowMs);
      if ((since === undefined) !== (kiosk.offlineSince === undefined)) this.#touch(bay);
    }
  }

  /** The time has gone on: jobs at work are expected to end another time. */
  touchRunning(): void {
    for (const [bay, { phase }] of this.#jobs) if (phase === 'running') this.#touch(bay);
  }

  /** The cards that changed after the named version, in the shop's order; all with 0. */
  changedAfter(version: number): readonly BayCard[] {
    return this.order.flatMap((bay) =>
      version === 0 || (this.#versions.get(bay) ?? 0) > version ? (this.#card(bay) ?? []) : [],
    );
  }

  #touch(bay: string): void {
    this.version += 1;
    this.#versions.set(bay, this.version);
    this.#cards.delete(bay);
    this.#onChange();
  }

  #card(bay: string): BayCard | undefined {
    const card = this.#cards.get(bay) ?? this.#make(bay);
    if (card !== undefined) this.#cards.set(bay, card);
    return card;
  }

  #make(id: string): BayCard | undefined {
    const bay = this.#shop?.bays.find((one) => one.id === id);
    if (bay === undefined) return undefined;
    const job = this.#jobs.get(id);
    return bayCard({
      bay,
      job,
      presence: this.#presence.get(id),
      watchingSinceMs: this.#watchingSinceMs,
      earlier: job === undefined ? {} : this.#times.of(job),
      nameOf: (person) => this.#shop?.people.find((one) => one.id === person)?.name ?? person,
      nowMs: this.#now().getTime(),
    });
  }
}
