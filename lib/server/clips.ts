import { z } from 'zod';
import { readBytes } from './body';
import { answer, bytes, problem } from './problem';
import type { Endpoint } from './route';
import { signedOnToRead, signedOnToWrite } from './signed-on';

interface ClipParams {
  readonly clip: string;
}

/** One minute at 16 kHz in 16 bits. */
export const clipLimitBytes = 2_000_000;

const notFound = (): Response => problem('notFound', 'There is no such sound clip.');

/** PUT /api/clips/UUID (audio/wav): keeps the sound of a note. The same sound again changes nothing. */
export const keepClip: Endpoint<ClipParams> = async (server, request, { clip }) => {
  const session = await signedOnToWrite(server, request);
  if (!session.ok) return session.error;
  const id = z.uuid().safeParse(clip);
  if (!id.success) return problem('invalid', 'The id of a sound clip is a UUID.');
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

/** GET /api/clips/UUID: the sound, for somebody who is signed on. */
export const readClip: Endpoint<ClipParams> = async (server, request, { clip }) => {
  const session = await signedOnToRead(server, request);
  if (!session.ok) return session.error;
  const id = z.uuid().safeParse(clip);
  const sound = id.success ? await server.clips.read(id.data.toLowerCase()) : undefined;
  return sound === undefined ? notFound() : bytes(new Uint8Array(sound), 'audio/wav');
};
