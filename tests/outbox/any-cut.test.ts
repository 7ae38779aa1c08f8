import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { KioskDisk } from '@/components/kiosk/keep/disk';
import { openKioskDisk } from '@/components/kiosk/keep/kiosk-disk';
import { OutboxRunner } from '@/components/kiosk/keep/outbox-runner';
import { openBay } from '@/components/kiosk/keep/restore';
import type { KioskLink } from '@/components/kiosk/link';
import { applyEvent, replay, type Happening, type JobEvent, type JobState } from '@/lib/job';
import type { Delivery, StoredJob } from '@/lib/outbox';
import { err, ok, type Result } from '@/lib/result';
import { jobView, type JobLog, type Store } from '@/lib/store';
import { freshStore } from '../store/fresh-store';
import { event, jobId, opened } from '../store/small-shop';

/** What becomes of one try to reach the server. */
const fates = ['through', 'requestLost', 'answerLost', 'twice', 'late'] as const;
type Fate = (typeof fates)[number];

const moments = [
  'act',
  /** The kiosk's page is loaded again. */
  'reload',
  /** The kiosk loses power: what was not on its disk is gone. */
  'powerCut',
  /** A foreman answers from elsewhere. */
  'foreman',
  'pause',
] as const;
type Moment = (typeof moments)[number];

const turn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

const idOf = (n: number): string => `00000000-0000-4000-a000-${String(n).padStart(12, '0')}`;

/** The real store behind a network that does to each try what its fate says; without one it lets it through. */
class Network {
  readonly #log: JobLog;
  readonly #store: Store;
  readonly #fates: Fate[];
  readonly #late: (readonly JobEvent[])[] = [];

  constructor(store: Store, log: JobLog, fate: readonly Fate[]) {
    this.#store = store;
    this.#log = log;
    this.#fates = [...fate];
  }

  async append(events: readonly JobEvent[]): Promise<Delivery> {
    const stored = await this.#log.append(jobId(1), events);
    if (stored.ok) return { kind: 'stored' };
    const failure = stored.error;
    if (failure.kind === 'conflict') return { kind: 'overtaken', index: failure.index };
    const index = 'index' in failure ? failure.index : 0;
    return { kind: 'refused', message: failure.kind, index };
  }

  readonly deliver = async (events: readonly JobEvent[]): Promise<Delivery> => {
    const fate = this.#fates.shift() ?? 'through';
    const answer = await this.#fulfil(fate, events);
    // What was held up on the way arrives after everything else.
    const late = fate === 'late' ? undefined : this.#late.shift();
    if (late !== undefined) await this.append(late);
    return answer;
  };

  async #fulfil(fate: Fate, events: readonly JobEvent[]): Promise<Delivery> {
    switch (fate) {
      case 'through':
        return this.append(events);
      case 'twice':
        await this.append(events);
        return this.append(events);
      case 'answerLost':
        await this.append(events);
        return { kind: 'unreachable' };
      case 'late':
        this.#late.push(events);
        return { kind: 'unreachable' };
      case 'requestLost':
        return { kind: 'unreachable' };
    }
  }

  async record(): Promise<StoredJob> {
    const view = await jobView(this.#store, jobId(1));
    if (view === undefined) throw new Error('the job is gone');
    return view;
  }

  readonly readRecord = async (): Promise<Result<StoredJob, string>> =>
    this.#fates.shift() === 'requestLost' ? err('cut off') : ok(await this.record());

  /** What a kiosk finds that opens while the server is off. */
  readonly off = {
    readBay: () => Promise.resolve(err('off')),
    readRecord: () => Promise.resolve(err('off')),
    readJob: () => Promise.resolve(err('off')),
  } as unknown as KioskLink;
}

interface Power {
  on: boolean;
}

/** A kiosk by hand: its state, its queue and its disk, which can lose power. */
class KioskByHand {
  readonly #network: Network;
  readonly #disk: KioskDisk;
  readonly #page: JobState;
  /** What was done, in order, and is on the disk or was sent. */
  readonly kept: string[] = [];
  #powered: Power = { on: true };
  #count = 0;
  state: JobState;
  runner: OutboxRunner;

  constructor(network: Network, disk: KioskDisk, page: JobState) {
    this.#network = network;
    this.#disk = disk;
    this.#page = page;
    this.state = page;
    this.runner = this.#run([]);
  }

  /** Writes through while it has power. */
  #poweredDisk(): KioskDisk {
    const disk = this.#disk;
    const power: Power = { on: true };
    this.#powered = power;
    const while_ = async (write: () => Promise<void>): Promise<void> => {
      if (!power.on) return new Promise(() => undefined);
      await write();
    };
    return {
      ...disk,
      keepWaiting: (events) =>
        while_(async () => {
          await disk.keepWaiting(events);
          this.kept.push(...events.map(({ id }) => id));
        }),
      keepStored: (events) => while_(() => disk.keepStored(events)),
      keepInstead: (of, events) => while_(() => disk.keepInstead(of, events)),
      keepRecord: (job, record) => while_(() => disk.keepRecord(job, record)),
    };
  }

  #run(waiting: readonly JobEvent[]): OutboxRunner {
    return new OutboxRunner(
      {
        job: jobId(1),
        disk: this.#poweredDisk(),
        deliver: this.#network.deliver,
        readRecord: this.#network.readRecord,
        wait: turn,
        onChange: () => undefined,
        onSignOnNeeded: () => undefined,
        onJob: (job) => {
          this.state = job;
        },
        onDiskTrouble: () => {
          throw new Error('the disk failed');
        },
      },
      waiting,
    );
  }

  act(): void {
    const step = ['one', 'two', 'three'][this.#count % 3] ?? 'one';
    const happening: Happening = { type: 'stepBegun', step };
    this.#count += 1;
    const done = { ...event(1, this.state.seq + 1, happening), id: idOf(this.#count) };
    const after = applyEvent(this.state, done);
    if (!after.ok) throw new Error(after.error.message);
    this.state = after.value;
    this.runner.push([done]);
  }

  async reload(powerCut: boolean): Promise<void> {
    this.runner.stop();
    if (powerCut) this.#powered.on = false;
    else for (let n = 0; n < 5; n += 1) await turn();
    this.#powered.on = false;
    const found = await openBay(this.#disk, this.#network.off, 'bay-1', {
      job: this.#page,
      signedOn: undefined,
    });
    if (found.job === undefined) throw new Error(found.problem ?? 'no job');
    this.state = found.job;
    this.runner = this.#run(found.waiting);
    this.runner.resume();
  }
}

const foremanAnswers = async (network: Network, n: number): Promise<void> => {
  const { events } = await network.record();
  const answered = event(1, events.length + 1, { type: 'foremanAnswered' });
  await network.append([{ ...answered, id: idOf(900_000 + n), actor: 'finn', role: 'foreman' }]);
};

let databases = 0;

const play = async (course: readonly Moment[], fate: readonly Fate[]) => {
  const { store, log } = await freshStore();
  const network = new Network(store, log, fate);
  await network.append([opened(1)]);
  const record = await network.record();
  const page = replay(record.revision, record.events);
  if (!page.ok) throw new Error(page.error.message);
  databases += 1;
  const disk = await openKioskDisk(`any-cut-${databases}`);
  await disk.keepRecord(jobId(1), record);
  await disk.keepBay({ bay: 'bay-1', job: jobId(1) });
  const kiosk = new KioskByHand(network, disk, page.value);
  for (const [n, moment] of course.entries()) {
    if (moment === 'act') kiosk.act();
    if (moment === 'reload' || moment === 'powerCut') await kiosk.reload(moment === 'powerCut');
    if (moment === 'foreman') await foremanAnswers(network, n);
    if (moment === 'pause') for (let turns = 0; turns < 4; turns += 1) await turn();
  }
  await expect
    .poll(() => kiosk.runner.view, { timeout: 5_000, interval: 5 })
    .toMatchObject({ count: 0, conflict: undefined });
  const { events } = await network.record();
  const left = await disk.readJob(jobId(1));
  return { kiosk, events, left: left.ok ? left.value.waiting : [] };
};

describe('any sequence of cuts, lost answers, doubles, late arrivals, reloads and power cuts', () => {
  test('leaves in the store what was done at the kiosk: all of it, once, and in order', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.constantFrom(...moments, 'act', 'act'), { minLength: 4, maxLength: 25 }),
        fc.array(fc.constantFrom(...fates), { maxLength: 20 }),
        async (course, fate) => {
          const { kiosk, events, left } = await play(course, fate);
          expect(events.map(({ seq }) => seq)).toEqual(events.map((_, at) => at + 1));
          const mine = events.filter(({ id }) => id.startsWith('00000000-0000-4000-a000-0000000'));
          const ofKiosk = mine.filter(({ actor }) => actor === 'ada').map(({ id }) => id);
          expect(ofKiosk).toEqual(kiosk.kept);
          expect(left).toEqual([]);
        },
      ),
      { numRuns: 40 },
    );
  }, 120_000);

  test('without a power cut that is everything that was done', async () => {
    const { events } = await play(
      ['act', 'act', 'foreman', 'act', 'reload', 'act', 'foreman', 'act'],
      ['answerLost', 'late', 'requestLost', 'twice'],
    );
    const ofKiosk = events.filter(({ actor, seq }) => actor === 'ada' && seq > 1);
    expect(ofKiosk.map(({ id }) => id)).toEqual([1, 2, 3, 4, 5].map(idOf));
  });
});
