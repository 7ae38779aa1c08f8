import { mkdir, statfs } from 'node:fs/promises';
import { readSettings } from '../config';
import { hearingAnswer, hearingFolders } from '../hearing';
import { err, errorText, ok, type Result } from '../result';
import { clipShelf, jobLog, openStore, type ClipShelf, type JobLog, type Store } from '../store';
import { clipFolder, databaseFile } from '../store/files';
import { keepAnchoring } from './daily-anchor';
import { keepDeletingOldClips } from './clip-keeping';
import type { JobStories } from './job-story';
import { Metrics } from './metrics';
import { keepReview } from './review-keeper';
import { WallHub } from './wall-hub';

/** What all answers of one process share. */
export interface ShopServer {
  readonly store: Store;
  readonly log: JobLog;
  readonly clips: ClipShelf;
  /** Jobs as they were looked at last, shared by pages and interface. */
  readonly stories: JobStories;
  /** How the shop stands, for whoever looks on. */
  readonly wall: WallHub;
  /** What this process counts of its own work. */
  readonly metrics: Metrics;
  /** Whether kiosks are given a whole speech model. */
  readonly hasSpeechModel: () => Promise<boolean>;
  /** Room on the disk of the data folder, in bytes. */
  readonly freeBytes: () => Promise<number>;
  readonly now: () => Date;
}

export const shopServer = (
  store: Store,
  dataFolder: string,
  hasSpeechModel: ShopServer['hasSpeechModel'],
  now: () => Date,
): ShopServer => {
  const wall = new WallHub(store, now);
  return {
    store,
    log: jobLog(store, now, (state) => {
      wall.stored(state);
    }),
    clips: clipShelf(store, clipFolder(dataFolder)),
    stories: new Map(),
    wall,
    metrics: new Metrics(() => wall.listeners),
    hasSpeechModel,
    freeBytes: async () => {
      const { bavail, bsize } = await statfs(dataFolder);
      return bavail * bsize;
    },
    now,
  };
};

/** Asks as a kiosk asks, so that the answer is the one that it gets. */
const asksForModel = async (): Promise<boolean> => {
  const request = new Request('http://localhost/hearing/model.json');
  return (await hearingAnswer(hearingFolders(process.cwd()), request, false)).ok;
};

const open = async (): Promise<Result<ShopServer, string>> => {
  const settings = readSettings(process.env, process.cwd());
  if (!settings.ok) return settings;
  const { dataFolder } = settings.value;
  await mkdir(dataFolder, { recursive: true, mode: 0o700 });
  const store = await openStore(databaseFile(dataFolder));
  if (!store.ok) return store;
  const server = shopServer(store.value, dataFolder, asksForModel, () => new Date());
  server.metrics.withProcess();
  keepDeletingOldClips(server);
  keepReview(store.value);
  keepAnchoring(store.value, server.now);
  return ok(server);
};

declare global {
  var baycallShopServer: Promise<Result<ShopServer, string>> | undefined;
}

/**
 * The shop's server: opened once in a process, also where a bundler has made several copies of this module. The error
 * is one line; the next call tries again.
 */
export const getShopServer = async (): Promise<Result<ShopServer, string>> => {
  globalThis.baycallShopServer ??= open().catch((error: unknown) => err(errorText(error)));
  const server = await globalThis.baycallShopServer;
  if (!server.ok) globalThis.baycallShopServer = undefined;
  return server;
};
