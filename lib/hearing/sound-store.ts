import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { z } from 'zod';
import { err, errorText, ok, type Result } from '../result';
import type { KindTable } from '../sound';
import { kindTableSchema, soundManifestSchema } from './manifest';
import { checkFile, subfolders, type ModelTrouble } from './model-store';

/** A whole and checked sound classifier. */
export interface SoundModel {
  readonly name: string;
  readonly licence: string;
  readonly path: string;
  readonly bytes: number;
  readonly sha256: string;
  readonly kinds: KindTable;
}

/** The one that comes with the product; any other takes its place. */
const ownModel = 'bay-sounds-1';

const corrupt = (detail: string): Result<never, ModelTrouble> =>
  err({ problem: 'modelCorrupt', detail });

const readJson = async <T>(
  path: string,
  schema: z.ZodType<T>,
): Promise<Result<T, ModelTrouble>> => {
  try {
    const parsed = schema.safeParse(JSON.parse(await readFile(path, 'utf8')));
    return parsed.success ? ok(parsed.data) : corrupt(`${path} is not what models/README.md says`);
  } catch (error) {
    return corrupt(`${path}: ${errorText(error)}`);
  }
};

/** Finds the classifier in the folder of sound models: one that was put there before our own; of several, the first. */
export const findSoundModel = async (models: string): Promise<Result<SoundModel, ModelTrouble>> => {
  const names = [...(await subfolders(models))].sort();
  const name = names.find((one) => one !== ownModel) ?? names[0];
  if (name === undefined)
    return err({ problem: 'modelMissing', detail: `there is no model in ${models}` });
  const folder = join(models, name);
  const manifest = await readJson(join(folder, 'manifest.json'), soundManifestSchema);
  if (!manifest.ok) return manifest;
  const { model, kinds, licence, name: title } = manifest.value;
  const path = await checkFile(folder, model);
  if (!path.ok) return path;
  const tablePath = await checkFile(folder, kinds);
  if (!tablePath.ok) return tablePath;
  const table = await readJson(tablePath.value, kindTableSchema);
  if (!table.ok) return table;
  const { bytes, sha256 } = model;
  return ok({ name: title, licence, path: path.value, bytes, sha256, kinds: table.value });
};
