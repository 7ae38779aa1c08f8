import type { Person } from '../people';
import type { Bay, Shop, ShopAdapter, ShopSettings, TorqueTool } from '../shop';
import { openJobIn, openJobs, readJob, type JobRecord, type JobSummary } from './job-records';
import type { Store } from './open';
import { listProcedures, type ProcedureEntry } from './procedures';
import { readShop } from './shop-records';
import { toolCycles } from './tool-cycles';

/** All that a kiosk needs to know of its bay. */
export interface BayView {
  readonly shop: string;
  readonly bay: Bay;
  readonly job: JobSummary | undefined;
  readonly people: readonly Person[];
  readonly torqueTools: readonly TorqueTool[];
  readonly adapters: readonly ShopAdapter[];
  readonly settings: ShopSettings;
  /** How often each tool was used since its calibration, by tool id. */
  readonly toolCycles: Readonly<Record<string, number>>;
  readonly procedures: readonly ProcedureEntry[];
}

/** The shop with what is going on in it. */
export interface ShopView {
  readonly shop: Shop;
  readonly jobs: readonly JobSummary[];
  readonly procedures: readonly ProcedureEntry[];
}

/** A bay with its people, tools and open job; nothing where the shop has no such bay. */
export const bayView = async (store: Store, id: string): Promise<BayView | undefined> => {
  const shop = await readShop(store);
  const bay = shop?.bays.find((one) => one.id === id);
  if (shop === undefined || bay === undefined) return undefined;
  return {
    shop: shop.name,
    bay,
    job: await openJobIn(store.db, id),
    people: shop.people,
    torqueTools: shop.torqueTools,
    adapters: shop.adapters ?? [],
    settings: shop.settings ?? {},
    toolCycles: await toolCycles(store.db, shop.torqueTools),
    procedures: await listProcedures(store),
  };
};

/** A job with its revision and its events; nothing where there is no such job. */
export const jobView = (store: Store, id: string): Promise<JobRecord | undefined> =>
  readJob(store.db, id);

/** The whole shop; nothing before it has been set up. */
export const shopView = async (store: Store): Promise<ShopView | undefined> => {
  const shop = await readShop(store);
  if (shop === undefined) return undefined;
  return { shop, jobs: await openJobs(store.db), procedures: await listProcedures(store) };
};
