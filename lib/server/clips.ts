import { z } from 'zod';
import { noteSoundDays } from '../shop';
import { readShop } from '../store';
import { readBytes } from './body';
import { answer, bytes, problem } from './problem';
import type { Endpoint } from './route';
import type { ShopServer } from './shop-server';
import { foremanIn, sessionIn, signedOnToWrite } from './signed-on';

interface ClipParams {
  readonly clip: string;
}

/** One minute at 16 kHz in 16 bits. */
export const clipLimitBytes = 2_000_000;

const notFound = (): Response => problem('notFound', 'There is no such sound clip.');

const keepsSounds = async ({ store }: ShopServer): Promise<boolean> =>
  noteSoundDays((await readShop(store))?.settings ?? {}) > 0;

/** PUT /api/clips/UUID (audio/wav): keeps the sound of a note. The same sound again changes nothing. */
export const keepClip: Endpoint<ClipParams> = async (server, request, { clip }) => {
  const session = await signedOnToWrite(server, request);
  if (!session.ok) return session.error;
  const id = z.uuid().safeParse(clip);
  if (!id.success) return problem('invalid', 'The id of a sound clip is a UUID.');
  if (!(await keepsSounds(server)))
    return problem('notKept', 'This shop keeps no sound of spoken notes.');
  const sound = await readBytes(request, 'audio/wav', clipLimitBytes);
  if (!sound.ok) return sound.error;
  const { person, device } = session.value;
  const kept = await server.clips.keep(
    { id: id.data.toLowerCase(), sound: sound.value, person: person.id, device },
    server.now(),
  );
  if (kept.ok) return answer({ clip: id.data }, kept.value === 'kept' ? 201 : 200);
  return kept.error === 'notWave'
    ? problem('invalid', 'The content is no WAVE file.')
    : problem('idReused', 'Another sound is kept under this id already.');
};

/**
 * GET /api/clips/UUID: the sound, for a foreman at a screen of their own, and at the kiosk at which it was spoken, where
 * a foreman who is called hears it before deciding.
 */
export const readClip: Endpoint<ClipParams> = async (server, request, { clip }) => {
  const cookies = request.headers.get('cookie');
  const foreman = await foremanIn(server, cookies);
  const kiosk = await sessionIn(server, cookies);
  if (foreman === undefined && kiosk === undefined)
    return problem('signOn', 'Nobody is signed on at this screen; sign on first.');
  const id = z.uuid().safeParse(clip).data?.toLowerCase();
  const kept = id === undefined ? undefined : await server.clips.find(id);
  if (id === undefined || kept === undefined) return notFound();
  if (foreman === undefined && kept.device !== kiosk?.device)
    return problem('notForeman', 'A spoken note is heard by a foreman, or at its own kiosk.');
  if (kept.deletedAt !== undefined)
    return problem('notFound', `The sound was deleted at ${kept.deletedAt}, as the shop has set.`);
  const sound = await server.clips.read(id);
  return sound === undefined ? notFound() : bytes(new Uint8Array(sound), 'audio/wav');
};
