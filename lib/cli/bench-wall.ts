import { mkdtempSync, mkdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Browser, type Page } from 'playwright-core';
import { canBegin, type Happening, type JobEvent } from '../job';
import { openStore } from '../store';
import { databaseFile } from '../store/files';
import { nextEvent, nextStepDone, setUpWallShop, type BenchJob } from './bench-wall-shop';
import { simulateWeek, type WeekMeasures } from './bench-wall-week';
import { chromiumFlags } from './chromium';
import { memoryMb, residentMb } from './hearing-browser';
import { inPage } from './in-page';
import { startApp, type RunningApp } from './start-app';

/** What was measured of the wall over a shop of 60 bays. */
export interface WallMeasures {
  readonly bays: number;
  readonly perSecond: number;
  readonly events: number;
  /** From the answer of the server, which it gives once the event is on disk, to the second frame after it shows. */
  readonly toPaintedMs: readonly number[];
  /** From the request to its answer. */
  readonly toStoredMs: readonly number[];
  readonly unseen: number;
  readonly serverMb: readonly [before: number | undefined, after: number | undefined];
  readonly pageMb: number | undefined;
  readonly week: WeekMeasures;
}

const bays = 60;
const perSecond = 20;
const seconds = 45;

declare global {
  interface Window {
    wallPainted: Record<string, number>;
  }
}

/** Notes, on the wall clock, when each number of each bay's job was on the screen. Runs in the page. */
const notePainted = (): void => {
  window.wallPainted = {};
  const note = (tile: Element): void => {
    const key = `${tile.getAttribute('data-bay') ?? ''} ${tile.getAttribute('data-seq') ?? ''}`;
    requestAnimationFrame(() => {
      requestAnimationFrame(() => {
        window.wallPainted[key] ??= performance.timeOrigin + performance.now();
      });
    });
  };
  new MutationObserver((records) => {
    for (const { target } of records) if (target instanceof Element) note(target);
  }).observe(document, { subtree: true, attributes: true, attributeFilter: ['data-seq'] });
};

/** What goes on in a shop: mostly steps with what they ask, now and then a hold, a call or a deviation. */
const happenings = function* (job: BenchJob, n: number): Generator<Happening> {
  for (let turn = n; ; turn += 1) {
    if (turn % 6 === 3) {
      yield { type: 'jobHeld', reason: { text: 'Waiting for parts' } };
      yield { type: 'jobResumed' };
    }
    if (turn % 6 === 5) yield { type: 'foremanCalled' };
    const { state } = job;
    if (state.revision.steps.some(({ id }) => canBegin(state, id).ok)) yield* nextStepDone(state);
    else yield { type: 'stepBegun', step: state.revision.steps[turn % 5]?.id ?? '' };
  }
};

const post = async (address: string, job: BenchJob, event: JobEvent): Promise<void> => {
  const response = await fetch(`${address}/api/jobs/${event.job}/events`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', origin: address, cookie: job.cookie },
    body: JSON.stringify({ events: [event] }),
  });
  if (!response.ok) throw new Error(`${response.status}: ${await response.text()}`);
  await response.arrayBuffer();
};

const clock = (): number => performance.timeOrigin + performance.now();

const serverMb = async ({ pid }: RunningApp): Promise<number | undefined> =>
  pid === undefined ? undefined : residentMb(pid);

interface Sent {
  readonly key: string;
  readonly sentMs: number;
  readonly storedMs: number;
}

/** Writes events at an even pace, each bay in turn; a bay's next waits for the one before it. */
const work = async (address: string, jobs: readonly BenchJob[]): Promise<readonly Sent[]> => {
  const sources = jobs.map((job, n) => happenings(job, n));
  const last = jobs.map(() => Promise.resolve());
  const sent: Sent[] = [];
  const beganMs = performance.now();
  for (let n = 0; n < perSecond * seconds; n += 1) {
    const at = n % jobs.length;
    const job = jobs[at];
    if (job === undefined) throw new Error('no job');
    const dueMs = beganMs + (n * 1000) / perSecond;
    const waitMs = dueMs - performance.now();
    if (waitMs > 0) await new Promise((resolve) => setTimeout(resolve, waitMs));
    last[at] = (last[at] ?? Promise.resolve()).then(async () => {
      const next = sources[at]?.next();
      if (next === undefined || next.done === true) return;
      const event = nextEvent(job, next.value, Date.now());
      const sentMs = clock();
      await post(address, job, event);
      sent.push({ key: `${job.bay} ${event.seq}`, sentMs, storedMs: clock() });
    });
  }
  await Promise.all(last);
  return sent;
};

const openWall = async (browser: Browser, address: string): Promise<Page> => {
  const context = await browser.newContext({ viewport: { width: 1920, height: 1080 } });
  await context.addInitScript(inPage(notePainted));
  const page = await context.newPage();
  await page.goto(`${address}/wall`);
  await page.locator(`[data-bay="bay-${bays}"]`).waitFor();
  return page;
};

const measure = async (
  app: RunningApp,
  browser: Browser,
  jobs: readonly BenchJob[],
): Promise<WallMeasures> => {
  const page = await openWall(browser, app.address);
  await page.waitForTimeout(2_000);
  const beforeMb = await serverMb(app);
  const sent = await work(app.address, jobs);
  await page.waitForTimeout(2_000);
  const painted = await page.evaluate(() => window.wallPainted);
  const seen = sent.filter(({ key }) => painted[key] !== undefined);
  const [pageMb] = await memoryMb(browser);
  await page.close();
  return {
    bays,
    perSecond,
    events: sent.length,
    toPaintedMs: seen.map(({ key, storedMs }) => Math.max(0, (painted[key] ?? 0) - storedMs)),
    toStoredMs: sent.map(({ sentMs, storedMs }) => storedMs - sentMs),
    unseen: sent.length - seen.length,
    serverMb: [beforeMb, await serverMb(app)],
    pageMb,
    week: await simulateWeek(browser, app.address, bays),
  };
};

/** Starts the app over a shop of 60 bays, lets them work, and looks at a wall. */
export const measureWall = async (chromiumPath: string): Promise<WallMeasures> => {
  const folder = mkdtempSync(join(tmpdir(), 'baycall-bench-'));
  try {
    const data = join(folder, 'data');
    mkdirSync(data);
    const store = await openStore(databaseFile(data));
    if (!store.ok) throw new Error(store.error);
    const jobs = await setUpWallShop(store.value, bays, new Date(), { stories: false });
    await store.value.close();
    const app = await startApp(data);
    const browser = await chromium.launch({
      executablePath: chromiumPath,
      args: [...chromiumFlags(), '--js-flags=--expose-gc'],
    });
    try {
      return await measure(app, browser, jobs);
    } finally {
      await browser.close();
      await app.stop();
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};
