import { z } from 'zod';

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

/** Size of the model as it lies on disk. */
export const manifestBytes = (manifest: Manifest): number =>
  'archive' in manifest
    ? manifest.archive.bytes
    : manifest.folder.files.reduce((sum, file) => sum + file.bytes, 0);
