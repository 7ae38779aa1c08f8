import type { Person } from '../people';
import { vehicleSchema, type Bay, type Shop, type TorqueTool } from '../shop';
import { openJobIn, openJobs, readJob, type JobRecord, type JobSummary } from './job-records';
import type { Store } from './open';
import { listProcedures, type ProcedureEntry } from './procedures';
import { readShop, type WorkOrder } from './shop-records';

/** All that a kiosk needs to know of its bay. */
export interface BayView {
  readonly shop: string;
  readonly bay: Bay;
  readonly job: JobSummary | undefined;
  /** What waits in this bay and has not been begun. */
  readonly waiting: readonly (WorkOrder & { readonly title: string })[];
  readonly people: readonly Person[];
  readonly torqueTools: readonly TorqueTool[];
  readonly procedures: readonly ProcedureEntry[];
}

/** The shop with what is going on in it. */
export interface ShopView {
  readonly shop: Shop;
  readonly jobs: readonly JobSummary[];
  readonly procedures: readonly ProcedureEntry[];
}

const waitingIn = async ({ db }: Store, bay: string): Promise<BayView['waiting']> => {
  const rows = await db
    .selectFrom('work_orders as order')
    .innerJoin('procedure_revisions as sheet', (join) =>
      join
        .onRef('sheet.procedure', '=', 'order.procedure')
        .onRef('sheet.revision', '=', 'order.revision'),
    )
    .select(['order.bay', 'order.procedure', 'order.revision', 'order.vehicle', 'sheet.title'])
    .where('order.bay', '=', bay)
    .where('order.job', 'is', null)
    .orderBy('order.id')
    .execute();
  return rows.map((row) => ({ ...row, vehicle: vehicleSchema.parse(JSON.parse(row.vehicle)) }));
};

/** A bay with its people, tools, open job and what waits for it; nothing where the shop has no such bay. */
export const bayView = async (store: Store, id: string): Promise<BayView | undefined> => {
  const shop = await readShop(store);
  const bay = shop?.bays.find((one) => one.id === id);
  if (shop === undefined || bay === undefined) return undefined;
  return {
    shop: shop.name,
    bay,
    job: await openJobIn(store.db, id),
    waiting: await waitingIn(store, id),
    people: shop.people,
    torqueTools: shop.torqueTools,
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
