import { noteSoundDays } from '../shop';
import { readShop } from '../store';
import { log } from './log';
import type { ShopServer } from './shop-server';

const dayMs = 86_400_000;
/** How often old sounds are looked for. */
const everyMs = 3_600_000;

type Keeper = Pick<ShopServer, 'store' | 'clips' | 'now'>;

/** Deletes the sounds of spoken notes that are older than the shop keeps them. Answers how many. */
export const deleteOldClips = async ({ store, clips, now }: Keeper): Promise<number> => {
  const shop = await readShop(store);
  if (shop === undefined) return 0;
  const at = now();
  const keptMs = noteSoundDays(shop.settings ?? {}) * dayMs;
  return clips.deleteBefore(new Date(at.getTime() - keptMs), at);
};

/** Does so now and every hour, for as long as the process lives. */
export const keepDeletingOldClips = (keeper: Keeper): void => {
  const look = (): void => {
    deleteOldClips(keeper).then(
      (count) => {
        if (count > 0)
          log.info({ count }, 'sounds of spoken notes were deleted, as the shop has set');
      },
      (error: unknown) => {
        log.error({ err: error }, 'old sounds could not be deleted');
      },
    );
  };
  look();
  setInterval(look, everyMs).unref();
};
