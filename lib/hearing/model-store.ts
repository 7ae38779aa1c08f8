import { createHash } from 'node:crypto';
import { createReadStream, createWriteStream } from 'node:fs';
import { mkdir, readdir, readFile, rename, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { createGzip } from 'node:zlib';
import { err, ok, type Result } from '../result';
import { manifestBytes, manifestSchema, type Manifest, type ModelFile } from './manifest';
import { tarOf } from './tar';

/** Where models lie, and where archives are packed to. */
export interface ModelFolders {
  readonly models: string;
  readonly packed: string;
}

export interface ModelTrouble {
  readonly problem: 'modelMissing' | 'modelCorrupt';
  /** For whoever keeps the server. */
  readonly detail: string;
}

/** A whole and checked archive. */
export interface Model {
  readonly name: string;
  readonly language: string;
  readonly licence: string;
  readonly path: string;
  readonly bytes: number;
  readonly sha256: string;
}

/** The one that comes with the product; any other takes its place. */
const ownModel = 'en-bay-3';

const missing = (detail: string): Result<never, ModelTrouble> =>
  err({ problem: 'modelMissing', detail });
const corrupt = (detail: string): Result<never, ModelTrouble> =>
  err({ problem: 'modelCorrupt', detail });

const isAbsent = (error: unknown): boolean =>
  error instanceof Error && 'code' in error && error.code === 'ENOENT';

export const subfolders = async (folder: string): Promise<readonly string[]> => {
  try {
    const entries = await readdir(folder, { withFileTypes: true });
    return entries.filter((entry) => entry.isDirectory()).map((entry) => entry.name);
  } catch (error) {
    if (isAbsent(error)) return [];
    throw error;
  }
};

const readManifest = async (folder: string): Promise<Result<Manifest, ModelTrouble>> => {
  const path = join(folder, 'manifest.json');
  try {
    const parsed = manifestSchema.safeParse(JSON.parse(await readFile(path, 'utf8')));
    return parsed.success ? ok(parsed.data) : corrupt(`${path} is not a manifest`);
  } catch (error) {
    if (isAbsent(error)) return corrupt(`${path} is missing (see models/README.md)`);
    if (error instanceof SyntaxError) return corrupt(`${path} is not JSON`);
    throw error;
  }
};

export const sha256Of = async (path: string): Promise<string> => {
  const hash = createHash('sha256');
  for await (const part of createReadStream(path)) hash.update(part as Buffer);
  return hash.digest('hex');
};

/** The file's path where it is whole. */
export const checkFile = async (
  folder: string,
  file: ModelFile,
): Promise<Result<string, ModelTrouble>> => {
  const path = join(folder, file.file);
  try {
    const { size } = await stat(path);
    if (size !== file.bytes) return corrupt(`${path} has ${size} bytes instead of ${file.bytes}`);
  } catch (error) {
    if (isAbsent(error)) return missing(`${path} is missing`);
    throw error;
  }
  const sha256 = await sha256Of(path);
  return sha256 === file.sha256 ? ok(path) : corrupt(`${path} has another checksum`);
};

/** The recogniser takes archives only: the folder's files become one, with one top folder. */
const pack = async (
  folder: string,
  manifest: Extract<Manifest, { folder: unknown }>,
  target: string,
): Promise<Result<string, ModelTrouble>> => {
  const { root, files } = manifest.folder;
  for (const file of files) {
    const checked = await checkFile(join(folder, root), file);
    if (!checked.ok) return checked;
  }
  await mkdir(target, { recursive: true });
  const path = join(target, `${manifest.name.replace(/[^\w.-]/g, '_')}.tar.gz`);
  const unfinished = `${path}.${process.pid}.part`;
  await pipeline(
    tarOf(
      files.map(({ file, bytes }) => ({
        path: `model/${file}`,
        source: join(folder, root, file),
        bytes,
      })),
    ),
    createGzip({ level: 6 }),
    createWriteStream(unfinished),
  );
  await rename(unfinished, path);
  return ok(path);
};

const open = async (
  folders: ModelFolders,
  name: string,
  manifest: Manifest,
): Promise<Result<Model, ModelTrouble>> => {
  const folder = join(folders.models, name);
  const path =
    'archive' in manifest
      ? await checkFile(folder, manifest.archive)
      : await pack(folder, manifest, folders.packed);
  if (!path.ok) return path;
  const { size } = await stat(path.value);
  const { name: title, language, licence } = manifest;
  const sha256 = 'archive' in manifest ? manifest.archive.sha256 : await sha256Of(path.value);
  return ok({ name: title, language, licence, path: path.value, bytes: size, sha256 });
};

/**
 * Finds the model to listen with: one that was put there takes the place of our own; of several, the largest.
 * Checks sizes and SHA-256 of what the manifest names; a damaged one is reported, never passed over in silence.
 */
export const findModel = async (folders: ModelFolders): Promise<Result<Model, ModelTrouble>> => {
  const names = await subfolders(folders.models);
  if (names.length === 0) return missing(`there is no model in ${folders.models}`);
  const found: { name: string; manifest: Manifest }[] = [];
  for (const name of [...names].sort()) {
    const manifest = await readManifest(join(folders.models, name));
    if (!manifest.ok) return manifest;
    found.push({ name, manifest: manifest.value });
  }
  const added = found.filter(({ name }) => name !== ownModel);
  const [best] = [...(added.length > 0 ? added : found)].sort(
    (a, b) => manifestBytes(b.manifest) - manifestBytes(a.manifest),
  );
  return best === undefined
    ? missing(`there is no model in ${folders.models}`)
    : open(folders, best.name, best.manifest);
};
