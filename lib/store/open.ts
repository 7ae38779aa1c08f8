import Libsql from 'libsql';
import { Kysely, Migrator } from 'kysely';
import { z } from 'zod';
import { err, errorText, ok, type Result } from '../result';
import { keepingStatements, LibsqlDialect } from './dialect';
import { migrations } from './migrations';
import type { Tables } from './tables';

/** The open database of one shop. */
export interface Store {
  readonly db: Kysely<Tables>;
  /** As read back from the database, for the health page. */
  readonly pragmas: Readonly<Record<string, string | number>>;
  close(): Promise<void>;
}

/**
 * Acknowledged means on disk: in WAL mode only synchronous=FULL (2) syncs at each commit (sqlite.org/pragma.html).
 * All of them are set for this connection and read back.
 */
const pragmas = [
  { name: 'journal_mode', set: 'wal', wanted: 'wal' },
  { name: 'synchronous', set: 'full', wanted: 2 },
  { name: 'foreign_keys', set: 'on', wanted: 1 },
  { name: 'busy_timeout', set: '5000', wanted: 5000 },
] as const;

const pragmaRow = z.record(z.string(), z.union([z.string(), z.number()]));

const readPragma = (database: Libsql.Database, name: string): string | number | undefined => {
  const row = pragmaRow.safeParse(database.prepare(`pragma ${name}`).all()[0]);
  return row.success ? Object.values(row.data)[0] : undefined;
};

const setPragmas = (database: Libsql.Database): Result<Store['pragmas'], string> => {
  const seen: Record<string, string | number> = {};
  for (const { name, set, wanted } of pragmas) {
    database.exec(`pragma ${name} = ${set}`);
    const value = readPragma(database, name);
    if (value !== wanted) {
      return err(`The database does not keep ${name} = ${wanted}; it answers ${String(value)}.`);
    }
    seen[name] = value;
  }
  return ok(seen);
};

const migrate = async (db: Kysely<Tables>): Promise<Result<undefined, string>> => {
  const provider = { getMigrations: () => Promise.resolve(migrations) };
  const { error, results } = await new Migrator({ db, provider }).migrateToLatest();
  if (error === undefined) return ok(undefined);
  const at = results?.find((result) => result.status === 'Error')?.migrationName;
  return err(
    `The database could not be brought up to date${at ? ` (${at})` : ''}: ${errorText(error)}`,
  );
};

const prepare = async (database: Libsql.Database): Promise<Result<Store, string>> => {
  const set = setPragmas(database);
  if (!set.ok) return set;
  const dialect = new LibsqlDialect({ database: keepingStatements(database, 200) });
  const db = new Kysely<Tables>({ dialect });
  const ready = await migrate(db);
  return ready.ok ? ok({ db, pragmas: set.value, close: () => db.destroy() }) : ready;
};

/**
 * Opens the database file, makes it durable, reads back that it is, and brings its tables up to date. The folder must
 * exist. The error is one line for the person who starts the server.
 */
export const openStore = async (file: string): Promise<Result<Store, string>> => {
  let database: Libsql.Database | undefined;
  try {
    database = new Libsql(file);
    const store = await prepare(database);
    if (!store.ok) database.close();
    return store;
  } catch (error) {
    database?.close();
    return err(`The database ${file} cannot be used: ${errorText(error)}`);
  }
};
