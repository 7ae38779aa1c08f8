import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type BrowserContextOptions, type Page } from 'playwright-core';
import { onTestFinished } from 'vitest';
import { chromiumFlags, findChromium } from '@/lib/cli/chromium';
import { startApp } from '@/lib/cli/start-app';

export const chromiumPath = async (): Promise<string> => {
  const found = await findChromium();
  if (!found.ok) throw new Error(found.error);
  return found.value;
};

/** A folder that is gone after the test. */
export const testFolder = (): string => {
  const folder = mkdtempSync(join(tmpdir(), 'baycall-job-'));
  onTestFinished(() => {
    rmSync(folder, { recursive: true, force: true });
  });
  return folder;
};

/** The app with a demo shop of its own; its address. */
export const ownApp = async (): Promise<string> => {
  const app = await startApp(testFolder());
  onTestFinished(async () => {
    await app.stop();
  });
  return app.address;
};

/** A page as large as the bay's screen, in a browser of its own. */
export const bayPage = async (
  options: BrowserContextOptions = {},
  flags: readonly string[] = [],
): Promise<{ readonly page: Page; readonly close: () => Promise<void> }> => {
  const browser = await chromium.launch({
    executablePath: await chromiumPath(),
    args: [...chromiumFlags(), ...flags],
  });
  const context = await browser.newContext({
    viewport: { width: 1920, height: 1080 },
    // Keeping the page for when the server is off is a test of its own.
    serviceWorkers: 'block',
    ...options,
  });
  return { page: await context.newPage(), close: () => browser.close() };
};

/** The same; the browser ends with the test. */
export const testPage = async (
  options: BrowserContextOptions = {},
  flags: readonly string[] = [],
): Promise<Page> => {
  const { page, close } = await bayPage(options, flags);
  onTestFinished(close);
  return page;
};
