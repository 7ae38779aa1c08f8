import { join } from 'node:path';
import { v7 as newId } from 'uuid';
import { demoMonth } from '../../demo/month';
import { demoProcedures } from '../../demo';
import { replay, type JobEvent, type JobState } from '../job';
import { bayView, canonicalJson, jobLog, openStore, type Store } from '../store';
import { NO_LINK } from '../store/chain';
import { openJobs, readEvents, rebuildState } from '../store/job-records';
import { insertEvents, saveJob } from '../store/job-writes';
import { onProjectDisk, openedStore } from './bench-appends';
import { nextEvent, nextStepDone, setUpWallShop, type BenchJob } from './bench-wall-shop';

/** What a record larger than any shop makes costs. */
export interface LargeMeasures {
  readonly jobEvents: number;
  /** Reading, checking and replaying one job of so many events. */
  readonly readMs: number;
  readonly replayMs: number;
  /** The next event of that job, when its state is not at hand, and when it is. */
  readonly coldAppendMs: number;
  readonly warmAppendMs: number;
  readonly storedEvents: number;
  /** Opening the database, as at the start of the server. */
  readonly openMs: number;
  /** The first page of a kiosk, and one after it. */
  readonly firstBayMs: number;
  readonly nextBayMs: number;
  /** All open jobs, as for the wall. */
  readonly openJobsMs: number;
}

const jobEvents = 100_000;
const storedEvents = 1_000_000;
const bays = 20;

const timed = async <T>(work: () => T | Promise<T>): Promise<{ ms: number; value: T }> => {
  const began = performance.now();
  const value = await work();
  return { ms: performance.now() - began, value };
};

/** Goes on with a job as no mechanic would: all that its steps ask once, then to and fro, held, resumed, called. */
const goOn = (job: BenchJob, most: number, atMs: number): readonly JobEvent[] => {
  const events: JobEvent[] = [];
  const write = (happening: Parameters<typeof nextEvent>[1]) => {
    events.push(nextEvent(job, happening, atMs));
  };
  for (;;) {
    const doing = nextStepDone(job.state);
    if (doing.length === 0 || events.length + doing.length > most / 2) break;
    for (const happening of doing) write(happening);
  }
  const steps = job.state.revision.steps.slice(0, 2);
  while (events.length < most) {
    for (const { id: step } of steps) write({ type: 'stepBegun', step });
    write({ type: 'jobHeld', reason: { text: 'Waiting for parts' } });
    write({ type: 'jobResumed' });
    write({ type: 'foremanCalled' });
  }
  return events.slice(0, most);
};

const appendAll = async (store: Store, now: Date, events: readonly JobEvent[]): Promise<void> => {
  const log = jobLog(store, () => now);
  for (let at = 0; at < events.length; at += 200) {
    const some = events.slice(at, at + 200);
    const stored = await log.append(some[0]?.job ?? '', some);
    if (!stored.ok) throw new Error(JSON.stringify(stored.error));
  }
};

/** The same job once more, with ids of its own. */
const copyOf = (events: readonly JobEvent[], state: JobState) => {
  const ids = new Map([...events.map(({ id }) => id), state.job].map((id) => [id, newId()]));
  const renamed = (text: string): string =>
    text.replace(/[0-9a-f]{8}-[0-9a-f-]{27}/g, (id) => ids.get(id) ?? id);
  const job = ids.get(state.job) ?? '';
  const rows = events.map((event) => ({
    event: { ...event, id: ids.get(event.id) ?? '', job },
    text: renamed(canonicalJson(event)),
    bay: state.bay,
  }));
  return { state: { ...state, job }, rows };
};

/** Fills the store with closed jobs up to so many events: those of a demo month, over and over. */
const fill = async ({ db }: Store, now: Date): Promise<number> => {
  const month = demoMonth({ seed: '1', until: now.toISOString().slice(0, 10), days: 30 });
  const models = month.flatMap((events) => {
    const opening = events[0]?.happening;
    const revision = demoProcedures.find(
      (one) => opening?.type === 'jobOpened' && one.procedure === opening.procedure,
    );
    const state = revision === undefined ? undefined : replay(revision, events);
    return state?.ok === true ? [{ events, state: { ...state.value, bay: 'bay-1' } }] : [];
  });
  let count = 0;
  for (let n = 0; count < storedEvents; n += 1) {
    const model = models[n % models.length];
    if (model === undefined) throw new Error('the demo month is empty');
    const { state, rows } = copyOf(model.events, model.state);
    await db.transaction().execute(async (write) => {
      await saveJob(write, state, undefined);
      await insertEvents(write, rows, NO_LINK, now);
    });
    count += rows.length;
  }
  return count;
};

const measureLongJob = async (folder: string, now: Date) => {
  const store = await openedStore(join(folder, 'long.db'));
  const [job] = await setUpWallShop(store, 1, now, { stories: false });
  if (job === undefined) throw new Error('no job');
  const { seq, revision, job: id } = job.state;
  await appendAll(store, now, goOn(job, jobEvents - seq, now.getTime()));
  const read = await timed(() => readEvents(store.db, id));
  const replayed = await timed(() => replay(revision, read.value));
  if (!replayed.value.ok) throw new Error(replayed.value.error.message);
  job.state = replayed.value.value;
  const log = jobLog(store, () => now);
  const one = () => {
    const [step] = revision.steps;
    const event = nextEvent(job, { type: 'stepBegun', step: step?.id ?? '' }, now.getTime());
    return timed(() => log.append(id, [event]));
  };
  const cold = await one();
  const warm = await one();
  if (!cold.value.ok || !warm.value.ok) throw new Error('the job does not go on');
  await store.close();
  return {
    jobEvents: read.value.length,
    readMs: read.ms,
    replayMs: replayed.ms,
    coldAppendMs: cold.ms,
    warmAppendMs: warm.ms,
  };
};

const measureStart = async (folder: string, now: Date) => {
  const file = join(folder, 'many.db');
  const filled = await openedStore(file);
  await setUpWallShop(filled, bays, now, { stories: false });
  const stored = await fill(filled, now);
  await filled.close();
  const opened = await timed(() => openStore(file));
  if (!opened.value.ok) throw new Error(opened.value.error);
  const store = opened.value.value;
  const first = await timed(() => bayView(store, 'bay-1'));
  const next = await timed(() => bayView(store, 'bay-2'));
  const open = await timed(async () => {
    for (const { id } of await openJobs(store.db)) await rebuildState(store.db, id);
  });
  await store.close();
  return {
    storedEvents: stored,
    openMs: opened.ms,
    firstBayMs: first.ms,
    nextBayMs: next.ms,
    openJobsMs: open.ms,
  };
};

export const measureLarge = (): Promise<LargeMeasures> =>
  onProjectDisk(async (folder) => {
    const now = new Date();
    return { ...(await measureLongJob(folder, now)), ...(await measureStart(folder, now)) };
  });
