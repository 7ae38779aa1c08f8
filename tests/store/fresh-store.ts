import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { jobLog, openStore, setUpShop, type Store } from '@/lib/store';
import { noon, smallShop, threeSteps } from './small-shop';

/** A folder that is gone after the test. */
export const testFolder = (): string => {
  const folder = mkdtempSync(join(tmpdir(), 'baycall-'));
  onTestFinished(() => {
    rmSync(folder, { recursive: true, force: true });
  });
  return folder;
};

export const opens = async (file: string): Promise<Store> => {
  const store = await openStore(file);
  if (!store.ok) throw new Error(store.error);
  return store.value;
};

/** A new store on disk with the small shop in it, and its job log. */
export const freshStore = async (pinHashes: Readonly<Record<string, string>> = {}) => {
  const folder = testFolder();
  const file = join(folder, 'baycall.db');
  const store = await opens(file);
  onTestFinished(() => store.close());
  await setUpShop(store, { shop: smallShop, pinHashes, procedures: [threeSteps] }, noon);
  return { folder, file, store, log: jobLog(store, () => noon) };
};
