import { readFile } from 'node:fs/promises';
import { chromium, type Browser, type Page } from 'playwright-core';
import type { Trial, TrialResult } from '../../components/microphone/measure/check';
import { err, ok, type Result } from '../result';
import type { Understanding } from '../voice';
import { chromiumFlags, findChromium } from './chromium';

/** One page that measures; it does one trial at a time. */
export interface MeasuringPage {
  /** Time from nothing to a model that listens, ms. */
  readonly loadMs: number;
  listen(trial: Trial): Promise<TrialResult>;
  meanings(says: readonly string[]): Promise<readonly Understanding[]>;
}

export interface MeasuringBrowser {
  readonly version: string;
  openPage(): Promise<MeasuringPage>;
  /** Resident memory of the browser's page processes, MB, the largest first; empty where the system does not tell. */
  memoryMb(): Promise<readonly number[]>;
  close(): Promise<void>;
}

/** Resident memory of a process, MB; undefined where the system does not tell. */
export const residentMb = async (processId: number): Promise<number | undefined> => {
  try {
    const status = await readFile(`/proc/${processId}/status`, 'utf8');
    const kb = /^VmRSS:\s+(\d+) kB$/m.exec(status)?.[1];
    return kb === undefined ? undefined : Number(kb) / 1024;
  } catch {
    // No such file system here, or the process has just ended.
    return undefined;
  }
};

/** Resident memory of the browser's page processes, MB, the largest first. */
export const memoryMb = async (browser: Browser): Promise<readonly number[]> => {
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  await session.detach();
  const sizes = await Promise.all(
    processInfo.filter(({ type }) => type === 'renderer').map(({ id }) => residentMb(id)),
  );
  return sizes.filter((size) => size !== undefined).sort((a, b) => b - a);
};

const openPage = async (browser: Browser, origin: string): Promise<MeasuringPage> => {
  // A context of its own: its own empty store, as a browser that has never been here.
  const context = await browser.newContext();
  const page: Page = await context.newPage();
  await page.goto(`${origin}/hearing/check`, { waitUntil: 'load' });
  await page.waitForFunction(() => 'measure' in window);
  const loadMs = await page.evaluate(() => window.measure.load());
  return {
    loadMs,
    listen: (trial) => page.evaluate((one) => window.measure.listen(one), trial),
    meanings: (says) => page.evaluate((all) => all.map((say) => window.measure.meaning(say)), says),
  };
};

/** Starts Chromium on the measuring page of the origin. The error is one line. */
export const measuringBrowser = async (
  origin: string,
): Promise<Result<MeasuringBrowser, string>> => {
  const path = await findChromium();
  if (!path.ok) return path;
  try {
    const browser = await chromium.launch({
      executablePath: path.value,
      headless: true,
      args: [...chromiumFlags()],
    });
    return ok({
      version: browser.version(),
      openPage: () => openPage(browser, origin),
      memoryMb: () => memoryMb(browser),
      close: () => browser.close(),
    });
  } catch (error) {
    return err(`Chromium does not start: ${String(error).split('\n')[0] ?? ''}`);
  }
};
