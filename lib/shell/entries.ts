import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';

/** One file that a kiosk keeps so that it opens without the server. `revision` is null where its address changes with it. */
export interface ShellEntry {
  readonly url: string;
  readonly revision: string | null;
}

/** What the ears are made of; the models have addresses of their own and are kept as they are fetched. */
const hearing = [
  'worker.js',
  'sounds.js',
  'worklet.js',
  'audio/audio_wasm_internal.js',
  'audio/audio_wasm_internal.wasm',
] as const;

const filesUnder = async (folder: string): Promise<readonly string[]> => {
  const entries = await readdir(folder, { withFileTypes: true, recursive: true });
  return entries
    .filter((entry) => entry.isFile() && !entry.name.endsWith('.map'))
    .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1))
    .sort();
};

const revisionOf = async (path: string): Promise<string> =>
  createHash('sha256')
    .update(await readFile(path))
    .digest('hex')
    .slice(0, 16);

/** Everything of the built app that a kiosk's page needs, in a fixed order. */
export const shellEntries = async (root: string): Promise<readonly ShellEntry[]> => {
  const pages = await filesUnder(join(root, '.next', 'static'));
  const ears = hearing.map(async (name) => ({
    url: `/hearing/${name}`,
    revision: await revisionOf(join(root, '.build', 'hearing', name)),
  }));
  return [
    ...pages.map((path) => ({ url: `/_next/static/${path}`, revision: null })),
    ...(await Promise.all(ears)),
  ];
};
