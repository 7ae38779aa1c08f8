import { expect, test } from 'vitest';
import { keepingClips } from '@/components/kiosk/keep/keeping-clips';
import { memoryDisk } from '@/components/kiosk/keep/memory-disk';
import type { KioskLink } from '@/components/kiosk/link';
import { err, ok } from '@/lib/result';

const id = '00000000-0000-4000-8000-000000000001';

test('the sound of a reason waits on the kiosk’s disk and goes out once something is stored again', async () => {
  let there = false;
  const arrived: { readonly id: string; readonly text: string }[] = [];
  const server = {
    keepClip: async (clip: string, sound: Blob) => {
      if (!there) return err('The server cannot be reached.');
      arrived.push({ id: clip, text: await sound.text() });
      return ok(undefined);
    },
    deliver: () => Promise.resolve({ kind: there ? 'stored' : 'unreachable' }),
  } as unknown as KioskLink;
  const disk = memoryDisk();
  const link = keepingClips(server, disk);

  expect(await link.keepClip(id, new Blob(['wave']))).toEqual(ok(undefined));
  await link.deliver('job', []);
  expect(arrived).toEqual([]);
  there = true;
  await link.deliver('job', []);
  await expect.poll(() => arrived).toEqual([{ id, text: 'wave' }]);
  await expect.poll(() => disk.readClips()).toEqual([]);
});
