import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { startApp } from '@/lib/cli/start-app';

declare module 'vitest' {
  interface ProvidedContext {
    /** Address of the built app that all browser tests share: `inject('address')`. */
    address: string;
    /** Its data folder, with the demo shop. */
    dataFolder: string;
  }
}

/** Builds the app where that is due and serves it over a data folder of its own while the browser tests run. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const dataFolder = mkdtempSync(join(tmpdir(), 'baycall-browser-'));
  const app = await startApp(dataFolder);
  project.provide('address', app.address);
  project.provide('dataFolder', dataFolder);
  return async () => {
    await app.stop();
    rmSync(dataFolder, { recursive: true, force: true });
  };
}
