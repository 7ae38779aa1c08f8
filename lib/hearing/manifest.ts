import { z } from 'zod';
import { soundKinds } from '../sound';

const fileName = z
  .string()
  .regex(/^[^/\\]+(\/[^/\\]+)*$/)
  .refine((name) => !name.split('/').includes('..'));

const fileSchema = z.strictObject({
  file: fileName,
  bytes: z.number().int().positive(),
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
});
export type ModelFile = z.infer<typeof fileSchema>;

/**
 * `manifest.json` beside a speech model: either one gzipped tar archive with one top folder (`archive`),
 * or the unpacked model's files (`folder`, paths from the manifest's folder).
 */
export const manifestSchema = z.union([
  z.strictObject({
    name: z.string().min(1),
    language: z.string().min(2),
    licence: z.string().min(1),
    archive: fileSchema,
  }),
  z.strictObject({
    name: z.string().min(1),
    language: z.string().min(2),
    licence: z.string().min(1),
    folder: z.strictObject({ root: fileName, files: z.array(fileSchema).min(1) }),
  }),
]);
export type Manifest = z.infer<typeof manifestSchema>;

/**
 * `manifest.json` beside a sound classifier: the TFLite file with its metadata, and the table (JSON) that says which
 * of our kinds each of its labels stands for.
 */
export const soundManifestSchema = z.strictObject({
  name: z.string().min(1),
  licence: z.string().min(1),
  model: fileSchema,
  kinds: fileSchema,
});
export type SoundManifest = z.infer<typeof soundManifestSchema>;

/** The table: labels of the classifier to our kinds; what is left out counts for nothing. */
export const kindTableSchema = z.record(z.string(), z.enum(soundKinds));

/** Size of the model as it lies on disk. */
export const manifestBytes = (manifest: Manifest): number =>
  'archive' in manifest
    ? manifest.archive.bytes
    : manifest.folder.files.reduce((sum, file) => sum + file.bytes, 0);
