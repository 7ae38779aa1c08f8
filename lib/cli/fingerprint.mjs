import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';

const filesUnder = (path) => {
  const found = statSync(path, { throwIfNoEntry: false });
  if (found === undefined) return [];
  if (found.isFile()) return [path];
  return readdirSync(path)
    .sort()
    .flatMap((name) => filesUnder(join(path, name)));
};

/** SHA-256 over the names and contents of all files under the given paths of a folder. Missing paths count as empty. */
export const fingerprint = (folder, paths, salt = '') => {
  const hash = createHash('sha256').update(salt);
  for (const file of paths.flatMap((path) => filesUnder(join(folder, path)))) {
    const content = readFileSync(file);
    hash.update(`\0${relative(folder, file)}\0${content.length}\0`).update(content);
  }
  return hash.digest('hex');
};
