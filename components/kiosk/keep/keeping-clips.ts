import { ok } from '@/lib/result';
import type { KioskLink } from '../link';
import type { KioskDisk } from './disk';

/**
 * The same link, which keeps the sound of a reason on the kiosk's disk where the server does not take it now, and
 * sends it once something is stored again. The reason names its sound either way.
 */
export const keepingClips = (link: KioskLink, disk: KioskDisk): KioskLink => {
  let sending = false;
  const sendKept = async (): Promise<void> => {
    if (sending) return;
    sending = true;
    try {
      for (const { id, sound } of await disk.readClips()) {
        const kept = await link.keepClip(id, new Blob([sound], { type: 'audio/wav' }));
        if (kept.ok) await disk.dropClip(id);
      }
    } catch {
      return; // a disk that cannot be read now: the clips stay for the next time
    } finally {
      sending = false;
    }
  };
  return {
    ...link,
    keepClip: async (id, clip) => {
      const kept = await link.keepClip(id, clip);
      if (kept.ok) return kept;
      try {
        await disk.keepClip({ id, sound: await clip.arrayBuffer() });
        return ok(undefined);
      } catch {
        return kept; // kept nowhere: the reason goes without its sound, as the server's word has it
      }
    },
    deliver: async (job, events) => {
      const delivery = await link.deliver(job, events);
      if (delivery.kind === 'stored') void sendKept();
      return delivery;
    },
  };
};
