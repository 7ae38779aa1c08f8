import type { JobState } from '../job';
import { jobView, readShop, stateOf, type JobRecord } from '../store';
import type { Shop } from '../shop';
import type { ShopServer } from './shop-server';

/** What a page about one job is made of. */
export interface JobPage {
  readonly record: JobRecord;
  readonly state: JobState;
  readonly shop: Shop;
}

/** A job with its state and its shop; nothing where there is no such job. Throws where the record cannot be read. */
export const jobPage = async (
  { store }: Pick<ShopServer, 'store'>,
  job: string,
): Promise<JobPage | undefined> => {
  const record = await jobView(store, job);
  const shop = await readShop(store);
  if (record === undefined || shop === undefined) return undefined;
  return { record, state: stateOf(record), shop };
};
