import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { voicesFolder } from '../../../demo-shop';

export const dynamic = 'force-dynamic';

const notFound = (): Response => new Response('Not found\n', { status: 404 });

/** GET /demo/voices/FOLDER/NAME.flac: one recording of the demo. */
export const GET = async (
  _: Request,
  { params }: { readonly params: Promise<{ readonly file: readonly string[] }> },
): Promise<Response> => {
  const [folder, name, ...rest] = (await params).file;
  const plain = /^[a-z0-9-]+$/.test(folder ?? '') && /^[a-z0-9-]+\.flac$/.test(name ?? '');
  if (!plain || folder === undefined || name === undefined || rest.length > 0) return notFound();
  try {
    const sound = await readFile(join(voicesFolder(), folder, name));
    return new Response(new Uint8Array(sound), {
      headers: { 'content-type': 'audio/flac', 'x-content-type-options': 'nosniff' },
    });
  } catch {
    return notFound();
  }
};
