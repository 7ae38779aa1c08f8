import { setTimeout } from 'node:timers/promises';
import { chance } from '../../../demo/month/chance';
import { FaultKiosk, setUpFaultShop, type Written } from './kiosks';
import { look, type Looked } from './look';
import { startServer } from './running-server';

export interface KillReport extends Looked, Written {
  readonly rounds: number;
  readonly writesEach: number;
}

/**
 * In each round kiosks write, at a random moment the server is killed, started again, and the kiosks go on with what
 * was not acknowledged. What a kill leaves in the system's cache is not lost by it: for a power cut, the sync at each
 * commit stands in, which no test of a process can show.
 */
export const killRounds = async (
  folder: string,
  wanted: { readonly rounds: number; readonly writes: number; readonly seed: string },
): Promise<KillReport> => {
  const { rounds, writes, seed } = wanted;
  const random = chance(`kill ${seed}`);
  const shop = await setUpFaultShop(folder, 8);
  const written: Written = { acknowledged: 0, again: 0, signedOn: 0 };
  let server = startServer(folder);
  let killAt = Infinity;
  const killNow = async (): Promise<void> => {
    const dying = await server;
    await setTimeout(random.between(0, 4));
    server = dying.kill().then(() => startServer(folder));
  };
  let killed: Promise<void> = Promise.resolve();
  const way = {
    address: async () => (await server).address,
    onStored: (count: number) => {
      if (count < killAt) return;
      killAt = Infinity;
      killed = killNow();
    },
  };
  const kiosks = shop.jobs.map((job) => new FaultKiosk(job, shop, way, written));
  for (let round = 0; round < rounds; round += 1) {
    killAt = written.acknowledged + 1 + Math.floor(random.next() * (writes - 1));
    let left = writes;
    await Promise.all(
      kiosks.map(async (kiosk) => {
        while (left > 0) {
          left -= 1;
          await kiosk.write(1);
        }
      }),
    );
    await killed;
    await server;
  }
  await (await server).kill();
  return { ...(await look(folder, shop.acknowledged)), ...written, rounds, writesEach: writes };
};
