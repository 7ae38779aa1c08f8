import { chance } from '../../../demo/month/chance';
import { BadNetwork, type Ills } from './bad-network';
import { FaultKiosk, setUpFaultShop, type Written } from './kiosks';
import { look, type Looked } from './look';
import { startServer } from './running-server';

export interface NetworkReport extends Looked, Written {
  readonly ills: Ills;
}

/** Kiosks that write over a bad network, two events at once, so that they also overtake each other. */
export const networkFaults = async (
  folder: string,
  { writes, seed }: { readonly writes: number; readonly seed: string },
): Promise<NetworkReport> => {
  const shop = await setUpFaultShop(folder, 6);
  const written: Written = { acknowledged: 0, again: 0, signedOn: 0 };
  const server = await startServer(folder);
  const network = new BadNetwork(server.address, chance(`network ${seed}`));
  const address = await network.open();
  const kiosks = shop.jobs.map(
    (job) => new FaultKiosk(job, shop, { address: () => address }, written),
  );
  let left = writes;
  await Promise.all(
    kiosks.map(async (kiosk) => {
      while (left > 0) {
        left -= 2;
        await kiosk.write(2);
      }
    }),
  );
  await network.close();
  await server.kill();
  return { ...(await look(folder, shop.acknowledged)), ...written, ills: network.ills };
};
