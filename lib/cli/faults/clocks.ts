import { chance } from '../../../demo/month/chance';
import { FaultKiosk, setUpFaultShop, type Written } from './kiosks';
import { look, type Looked } from './look';
import { startServer } from './running-server';

export interface ClockReport extends Looked, Written {
  readonly jumps: number;
}

const dayMs = 24 * 3_600_000;

/** Kiosks that write while the server's clock jumps back and forth by up to two days. */
export const clockFaults = async (
  folder: string,
  { writes, seed }: { readonly writes: number; readonly seed: string },
): Promise<ClockReport> => {
  const random = chance(`clock ${seed}`);
  const shop = await setUpFaultShop(folder, 4);
  const written: Written = { acknowledged: 0, again: 0, signedOn: 0 };
  const server = await startServer(folder);
  const way = { address: () => server.address };
  const kiosks = shop.jobs.map((job) => new FaultKiosk(job, shop, way, written));
  let jumps = 0;
  for (let left = writes; left > 0; left -= 20) {
    // Ahead past the end of a shift, then back.
    const ahead = jumps % 2 === 0;
    await server.jump((ahead ? 1 : -1) * Math.round(random.between(ahead ? 0.6 : 0, 2) * dayMs));
    jumps += 1;
    await Promise.all(
      kiosks.map(async (kiosk) => {
        for (let n = 0; n < 5; n += 1) await kiosk.write(1);
      }),
    );
  }
  await server.kill();
  return { ...(await look(folder, shop.acknowledged)), ...written, jumps };
};
