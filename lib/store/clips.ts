import { createHash, randomUUID } from 'node:crypto';
import { mkdir, open, readFile, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { err, ok, type Result } from '../result';
import type { Store } from './open';

/** Why a clip was not kept. */
export type ClipFailure = 'notWave' | 'idReused';

/** The sounds that belong to notes: one WAV file each, out of the web root, named by its id and SHA-256. */
export interface ClipShelf {
  /** Keeps a sound under an id made by the kiosk; on disk before the promise is kept. The same again changes nothing. */
  keep(
    clip: {
      readonly id: string;
      readonly sound: Uint8Array;
      readonly person: string;
      readonly device: string;
    },
    now: Date,
  ): Promise<Result<'kept' | 'wasThere', ClipFailure>>;
  /** The sound of that id, if there is one. */
  read(id: string): Promise<Uint8Array | undefined>;
  /** What is known of a clip, also once its sound was deleted. */
  find(id: string): Promise<KeptClip | undefined>;
  /** When the sounds of these clips were deleted; those that are still there, or never were, are not among them. */
  deletedOf(ids: readonly string[]): Promise<ReadonlyMap<string, string>>;
  /** Deletes the sounds stored before an instant; their rows stay and say when. Answers how many. */
  deleteBefore(storedBefore: Date, now: Date): Promise<number>;
}

/** `device`: the kiosk at which it was spoken. Instants by RFC 3339. */
export interface KeptClip {
  readonly device: string;
  readonly storedAt: string;
  readonly deletedAt?: string;
}

const ascii = (bytes: Uint8Array, from: number, to: number): string =>
  String.fromCharCode(...bytes.subarray(from, to));

/** RIFF header of a WAVE file: "RIFF", length, "WAVE", and a first chunk. */
const isWave = (sound: Uint8Array): boolean =>
  sound.byteLength >= 44 && ascii(sound, 0, 4) === 'RIFF' && ascii(sound, 8, 12) === 'WAVE';

const writeDurably = async (folder: string, name: string, sound: Uint8Array): Promise<void> => {
  const part = join(folder, `${randomUUID()}.part`);
  const file = await open(part, 'w', 0o600);
  try {
    await file.writeFile(sound);
    await file.sync();
  } finally {
    await file.close();
  }
  await rename(part, join(folder, name));
  const names = await open(folder, 'r');
  try {
    await names.sync();
  } finally {
    await names.close();
  }
};

/** `folder` is made when the first clip comes. */
export const clipShelf = ({ db }: Store, folder: string): ClipShelf => {
  const rowOf = (id: string) =>
    db.selectFrom('clips').selectAll().where('id', '=', id).executeTakeFirst();
  const sha256Of = async (id: string): Promise<string | undefined> => (await rowOf(id))?.sha256;
  const fileOf = (id: string, sha256: string): string => join(folder, `${id}-${sha256}.wav`);
  return {
    async keep({ id, sound, person, device }, now) {
      if (!isWave(sound)) return err('notWave');
      const sha256 = createHash('sha256').update(sound).digest('hex');
      const there = await sha256Of(id);
      if (there !== undefined) return there === sha256 ? ok('wasThere') : err('idReused');
      await mkdir(folder, { recursive: true });
      await writeDurably(folder, `${id}-${sha256}.wav`, sound);
      const stored_at = now.toISOString();
      await db
        .insertInto('clips')
        .values({ id, sha256, bytes: sound.byteLength, person, device, stored_at })
        .onConflict((conflict) => conflict.column('id').doNothing())
        .execute();
      return (await sha256Of(id)) === sha256 ? ok('kept') : err('idReused');
    },
    async read(id) {
      const row = await rowOf(id);
      return row?.deleted_at === null ? readFile(fileOf(id, row.sha256)) : undefined;
    },
    async find(id) {
      const row = await rowOf(id);
      return row === undefined
        ? undefined
        : {
            device: row.device,
            storedAt: row.stored_at,
            ...(row.deleted_at === null ? {} : { deletedAt: row.deleted_at }),
          };
    },
    async deletedOf(ids) {
      if (ids.length === 0) return new Map();
      const rows = await db
        .selectFrom('clips')
        .select(['id', 'deleted_at'])
        .where('id', 'in', ids)
        .where('deleted_at', 'is not', null)
        .execute();
      return new Map(rows.map(({ id, deleted_at }) => [id, deleted_at ?? '']));
    },
    async deleteBefore(storedBefore, now) {
      const old = await db
        .selectFrom('clips')
        .select(['id', 'sha256'])
        .where('deleted_at', 'is', null)
        .where('stored_at', '<', storedBefore.toISOString())
        .execute();
      for (const { id, sha256 } of old) {
        // The file first: cut off between the two, the next time does both again.
        await rm(fileOf(id, sha256), { force: true });
        await db
          .updateTable('clips')
          .set({ deleted_at: now.toISOString() })
          .where('id', '=', id)
          .execute();
      }
      return old.length;
    },
  };
};
