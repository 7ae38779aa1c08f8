import { createHash, randomUUID } from 'node:crypto';
import { constants, existsSync } from 'node:fs';
import { copyFile, mkdir, open, readFile, rename, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import Libsql from 'libsql';
import { sql } from 'kysely';
import { err, errorText, ok, type Result } from '../result';
import { clipFolder, databaseFile } from './files';
import { openStore, type Store } from './open';
import { verifyAll, type Verification } from './verify';

/** What a look at a whole data folder, or at a backup of one, found. */
export interface Checked extends Verification {
  readonly clips: number;
}

/** A written file or folder is only safe once it is synced by name. */
const sync = async (path: string): Promise<void> => {
  const handle = await open(path, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
};

const copySynced = async (from: string, to: string): Promise<void> => {
  await copyFile(from, to, constants.COPYFILE_FICLONE);
  await sync(to);
};

/** The sounds that are there: those that were deleted after their days are not missing. */
const clipRows = ({ db }: Store) =>
  db.selectFrom('clips').select(['id', 'sha256']).where('deleted_at', 'is', null).execute();
type ClipRow = Awaited<ReturnType<typeof clipRows>>[number];

const clipName = ({ id, sha256 }: ClipRow): string => `${id}-${sha256}.wav`;

const clipFault = async (folder: string, clip: ClipRow): Promise<string | undefined> => {
  const file = join(clipFolder(folder), clipName(clip));
  if (!existsSync(file)) return `The sound of note ${clip.id} is missing.`;
  const sha256 = createHash('sha256')
    .update(await readFile(file))
    .digest('hex');
  return sha256 === clip.sha256 ? undefined : `The sound of note ${clip.id} was changed.`;
};

const checkStore = async (store: Store, folder: string): Promise<Checked> => {
  const { rows } = await sql<{ integrity_check: string }>`pragma integrity_check`.execute(store.db);
  const damage = rows.map((row) => row.integrity_check).filter((line) => line !== 'ok');
  const seen = await verifyAll(store.db);
  const clips = await clipRows(store);
  const faults = damage.map((line) => `The database file is damaged: ${line}`);
  for (const clip of clips) {
    const fault = await clipFault(folder, clip);
    if (fault !== undefined) faults.push(fault);
  }
  return { ...seen, clips: clips.length, faults: [...faults, ...seen.faults] };
};

const removeDatabase = async (file: string): Promise<void> => {
  for (const end of ['', '-wal', '-shm']) await rm(`${file}${end}`, { force: true });
};

/** Opens a copy of a folder's database, made for a while in `workIn`: opening changes a file, and no backup may change. */
const withCopy = async <T>(
  folder: string,
  workIn: string,
  look: (store: Store) => Promise<T>,
): Promise<Result<T, string>> => {
  const file = databaseFile(folder);
  if (!existsSync(file)) return err(`There is no record in ${folder}.`);
  const copy = join(workIn, `check-${randomUUID()}.db`);
  try {
    await copyFile(file, copy, constants.COPYFILE_FICLONE);
    const store = await openStore(copy);
    if (!store.ok) return store;
    try {
      return ok(await look(store.value));
    } finally {
      await store.value.close();
    }
  } catch (error) {
    return err(`${folder} cannot be read: ${errorText(error)}`);
  } finally {
    await removeDatabase(copy);
  }
};

/**
 * Looks at everything in a backup: that its database can be opened and is sound, that every chain and anchor holds, and
 * that every sound is there. It is done on a copy in `workIn`, so nothing in the folder changes. The error is one line.
 */
export const checkFolder = (folder: string, workIn: string): Promise<Result<Checked, string>> =>
  withCopy(folder, workIn, (store) => checkStore(store, folder));

/** One moment of the database, whoever else is writing to it. */
const snapshot = (file: string, to: string): void => {
  const database = new Libsql(file);
  try {
    database.exec('pragma busy_timeout = 5000');
    database.exec(`vacuum into '${to.replaceAll("'", "''")}'`);
  } finally {
    database.close();
  }
};

/** Copies the sounds that the database in `to` knows of. */
const copyClips = async (from: string, to: string): Promise<Result<undefined, string>> => {
  const clips = await withCopy(to, to, clipRows);
  if (!clips.ok || clips.value.length === 0) return clips.ok ? ok(undefined) : clips;
  await mkdir(clipFolder(to), { recursive: true, mode: 0o700 });
  for (const name of clips.value.map(clipName)) {
    const target = join(clipFolder(to), name);
    if (!existsSync(target) && existsSync(join(clipFolder(from), name)))
      await copySynced(join(clipFolder(from), name), target);
  }
  await sync(clipFolder(to));
  return ok(undefined);
};

/**
 * Copies a data folder to `to`, which must not be there, while the server may be writing: the database as of one
 * moment, and the sounds that it knows of. `to` is there under its name only once everything in it was checked.
 */
export const backUp = async (dataFolder: string, to: string): Promise<Result<Checked, string>> => {
  const file = databaseFile(dataFolder);
  if (!existsSync(file)) return err(`There is no record in ${dataFolder} to back up.`);
  if (existsSync(to)) return err(`${to} is there already: give the backup another name.`);
  const part = `${to}.part-${randomUUID()}`;
  try {
    await mkdir(part, { recursive: true, mode: 0o700 });
    snapshot(file, databaseFile(part));
    const clips = await copyClips(dataFolder, part);
    if (!clips.ok) return clips;
    const checked = await checkFolder(part, part);
    if (!checked.ok) return checked;
    if (checked.value.faults.length > 0) return checked;
    await sync(databaseFile(part));
    await sync(part);
    await rename(part, to);
    await sync(dirname(to));
    return checked;
  } catch (error) {
    return err(`The backup could not be made: ${errorText(error)}`);
  } finally {
    await rm(part, { recursive: true, force: true });
  }
};

/** Whether somebody has the database open. Leaves nothing in the write-ahead log where nobody has. */
const inUse = (file: string): boolean => {
  const database = new Libsql(file);
  try {
    for (const pragma of ['busy_timeout = 0', 'locking_mode = exclusive'])
      database.exec(`pragma ${pragma}`);
    database.exec('begin exclusive');
    database.exec('rollback');
    return false;
  } catch (error) {
    if (error instanceof Error && 'code' in error && String(error.code).startsWith('SQLITE_BUSY'))
      return true;
    throw error;
  } finally {
    database.close();
  }
};

const putAside = async (file: string, to: string): Promise<void> => {
  for (const end of ['', '-wal', '-shm'])
    if (existsSync(`${file}${end}`)) await rename(`${file}${end}`, `${to}${end}`);
};

/** What a restoring did: what stands there now, and where what stood there before was put. */
export interface Restored {
  readonly checked: Checked;
  readonly aside: string | undefined;
}

const wholeBackup = async (from: string, workIn: string): Promise<Result<Checked, string>> => {
  if (existsSync(`${databaseFile(from)}-wal`))
    return err(
      `${from} is not a backup but a folder that a server uses: make one with npm run backup.`,
    );
  await mkdir(workIn, { recursive: true, mode: 0o700 });
  const checked = await checkFolder(from, workIn);
  const fault = checked.ok ? checked.value.faults[0] : undefined;
  return fault === undefined
    ? checked
    : err(`This backup is not whole; nothing was changed. Take another one. ${fault}`);
};

/**
 * Puts a backup in the place of a data folder's record, after checking it, and checks it again there. What is there is
 * replaced only with `replace`, and then put aside, never deleted. The error is one line that says what to do.
 */
export const restore = async (
  from: string,
  dataFolder: string,
  { replace, now }: { readonly replace: boolean; readonly now: Date },
): Promise<Result<Restored, string>> => {
  const whole = await wholeBackup(from, dataFolder);
  if (!whole.ok) return whole;
  const file = databaseFile(dataFolder);
  const there = existsSync(file);
  if (there && !replace)
    return err(
      `${dataFolder} holds a record already; nothing was changed. ` +
        'With --force it is put aside and the backup takes its place.',
    );
  const aside = `${file}.before-${now.toISOString().replaceAll(':', '-')}`;
  const part = `${file}.part-${randomUUID()}`;
  try {
    if (there && inUse(file))
      return err(`The server is using ${dataFolder}; nothing was changed. Stop it first.`);
    await copySynced(databaseFile(from), part);
    if (there) await putAside(file, aside);
    await rename(part, file);
    await sync(dataFolder);
    const clips = await copyClips(from, dataFolder);
    if (!clips.ok) return clips;
    const after = await checkFolder(dataFolder, dataFolder);
    return after.ok ? ok({ checked: after.value, aside: there ? aside : undefined }) : after;
  } catch (error) {
    return err(
      `The backup could not be restored: ${errorText(error)}` +
        (existsSync(aside) ? ` What was there before is ${aside}.` : ''),
    );
  } finally {
    await removeDatabase(part);
  }
};
