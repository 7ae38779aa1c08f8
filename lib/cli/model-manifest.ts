import { readdir, stat, writeFile } from 'node:fs/promises';
import { basename, join, resolve, sep } from 'node:path';
import { parseArgs } from 'node:util';
import { manifestSchema, sha256Of, type Manifest, type ModelFile } from '../hearing';
import { errorText } from '../result';

const usage =
  'Use: npm run model:manifest -- models/speech/NAME --language en-US --licence "Apache-2.0"';

const fileFacts = async (folder: string, file: string): Promise<ModelFile> => {
  const path = join(folder, file);
  return {
    file: file.replaceAll(sep, '/'),
    bytes: (await stat(path)).size,
    sha256: await sha256Of(path),
  };
};

const filesUnder = async (folder: string): Promise<readonly string[]> => {
  const entries = await readdir(folder, { withFileTypes: true, recursive: true });
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1))
    .sort();
};

/** The manifest of a model folder's content: its one archive, or its one unpacked model. */
const manifestOf = async (
  folder: string,
  language: string,
  licence: string,
): Promise<Manifest | string> => {
  const entries = await readdir(folder, { withFileTypes: true });
  const archives = entries.filter(({ name }) => name.endsWith('.tar.gz') || name.endsWith('.tgz'));
  const roots = entries.filter((entry) => entry.isDirectory());
  const head = { name: basename(folder), language, licence };
  const [archive] = archives;
  const [root] = roots;
  if (archives.length === 1 && roots.length === 0 && archive !== undefined)
    return { ...head, archive: await fileFacts(folder, archive.name) };
  if (roots.length !== 1 || root === undefined || archives.length > 0)
    return `${folder} must hold either one .tar.gz or one unpacked model folder.`;
  const names = await filesUnder(join(folder, root.name));
  if (!names.some((name) => name.replaceAll(sep, '/') === 'am/final.mdl'))
    return `${join(folder, root.name)} is no Vosk model: it has no am/final.mdl.`;
  const files = await Promise.all(names.map((name) => fileFacts(join(folder, root.name), name)));
  return { ...head, folder: { root: root.name, files } };
};

const main = async (): Promise<string | undefined> => {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: { language: { type: 'string' }, licence: { type: 'string' } },
  });
  const [folder] = positionals;
  if (folder === undefined || values.language === undefined || values.licence === undefined)
    return usage;
  const manifest = await manifestOf(resolve(folder), values.language, values.licence);
  if (typeof manifest === 'string') return manifest;
  const path = join(folder, 'manifest.json');
  await writeFile(path, `${JSON.stringify(manifestSchema.parse(manifest), undefined, 2)}\n`);
  console.log(`Wrote ${path}.`);
  return undefined;
};

main().then(
  (problem) => {
    if (problem === undefined) return;
    console.error(problem);
    process.exitCode = 1;
  },
  (error: unknown) => {
    console.error(errorText(error));
    process.exitCode = 1;
  },
);
