import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Libsql from 'libsql';
import type { JobEvent } from '../job';
import { canonicalJson, jobLog, openStore, type JobLog, type Store } from '../store';
import { nextEvent, setUpWallShop, type BenchJob } from './bench-wall-shop';

const workFolder = fileURLToPath(new URL('../../.build', import.meta.url));

/** How fast something was done, one after another or by many at once. */
export interface Pace {
  readonly perSecond: number;
  /** Each call by itself, from asking to the answer. */
  readonly tookMs: readonly number[];
}

/** Measured in turns on the same disk, so that what else the machine does meets both alike. */
export interface AppendMeasures {
  /** A bare insert of the same text by a prepared statement, synced at each. */
  readonly bare: Pace;
  /** One kiosk that waits for each answer. */
  readonly single: Pace;
  /** Fifty kiosks, each of which waits for its own answers. */
  readonly concurrent: Pace;
}

const kiosks = 50;
const rounds = 5;
const singlesEachRound = 400;
const concurrentEachRound = 2500;

/** A folder on the disk of the project, gone afterwards. */
export const onProjectDisk = async <T>(work: (folder: string) => Promise<T>): Promise<T> => {
  mkdirSync(workFolder, { recursive: true });
  const folder = mkdtempSync(join(workFolder, 'bench-'));
  try {
    return await work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};

export const openedStore = async (file: string): Promise<Store> => {
  const store = await openStore(file);
  if (!store.ok) throw new Error(store.error);
  return store.value;
};

/** Goes to and fro between two steps: of the usual size, and nothing of the job grows. */
export const toAndFro = (job: BenchJob, atMs: number) => {
  const { steps } = job.state.revision;
  const step = steps[job.state.seq % 2]?.id ?? '';
  return nextEvent(job, { type: 'stepBegun', step }, atMs);
};

const write = async (log: JobLog, event: JobEvent): Promise<number> => {
  const began = performance.now();
  const stored = await log.append(event.job, [event]);
  const took = performance.now() - began;
  if (!stored.ok) throw new Error(JSON.stringify(stored.error));
  return took;
};

class Stopwatch {
  readonly tookMs: number[] = [];
  #ms = 0;

  async time(work: () => Promise<readonly number[]>): Promise<void> {
    const began = performance.now();
    const took = await work();
    this.#ms += performance.now() - began;
    this.tookMs.push(...took);
  }

  get pace(): Pace {
    return { perSecond: (this.tookMs.length / this.#ms) * 1000, tookMs: this.tookMs };
  }
}

const bareInsert = (file: string): ((text: string) => number) => {
  const database = new Libsql(file);
  for (const pragma of ['journal_mode = wal', 'synchronous = full'])
    database.exec(`pragma ${pragma}`);
  database.exec('create table bare (entry integer primary key, event text not null) strict');
  const insert = database.prepare('insert into bare (event) values (?)');
  return (text) => {
    const began = performance.now();
    insert.run([text]);
    return performance.now() - began;
  };
};

const inTurn = async <T>(all: readonly T[], one: (value: T) => number | Promise<number>) => {
  const took: number[] = [];
  for (const value of all) took.push(await one(value));
  return took;
};

export const measureAppends = (): Promise<AppendMeasures> =>
  onProjectDisk(async (folder) => {
    const store = await openedStore(join(folder, 'baycall.db'));
    const now = new Date();
    const jobs = await setUpWallShop(store, kiosks, now, { stories: false });
    const [first] = jobs;
    if (first === undefined) throw new Error('no job');
    const log = jobLog(store, () => now);
    const insert = bareInsert(join(folder, 'bare.db'));
    const text = canonicalJson(toAndFro({ ...first }, now.getTime()));
    const texts = Array.from({ length: singlesEachRound }, () => text);
    const bare = new Stopwatch();
    const single = new Stopwatch();
    const concurrent = new Stopwatch();
    // What a kiosk does to make an event is its own time.
    const eventsOf = (job: BenchJob, count: number): readonly JobEvent[] =>
      Array.from({ length: count }, () => toAndFro(job, now.getTime()));
    const oneKiosk = (events: readonly JobEvent[]) => inTurn(events, (event) => write(log, event));
    for (let round = 0; round < rounds; round += 1) {
      await bare.time(() => inTurn(texts, insert));
      const alone = eventsOf(first, singlesEachRound);
      await single.time(() => oneKiosk(alone));
      const each = jobs.map((job) => eventsOf(job, concurrentEachRound / kiosks));
      await concurrent.time(async () => (await Promise.all(each.map(oneKiosk))).flat());
    }
    await store.close();
    return { bare: bare.pace, single: single.pace, concurrent: concurrent.pace };
  });
