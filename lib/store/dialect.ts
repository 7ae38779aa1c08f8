import {
  CompiledQuery,
  SqliteAdapter,
  SqliteDialect,
  SqliteDriver,
  type DatabaseConnection,
  type DialectAdapter,
  type Driver,
  type SqliteDatabase,
  type SqliteDialectConfig,
  type SqliteStatement,
} from 'kysely';

const ended = /no transaction is active/;

class ImmediateDriver extends SqliteDriver {
  /** Takes the write lock at once, so that what a transaction has read still holds when it writes. */
  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw('begin immediate'));
  }

  /**
   * Where the disk is full or fails, SQLite itself undoes the transaction (sqlite.org/lang_transaction.html). Then
   * there is none to undo, and the first error is the one to tell.
   */
  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    try {
      await super.rollbackTransaction(connection);
    } catch (error) {
      if (!(error instanceof Error && ended.test(error.message))) throw error;
    }
  }
}

/** SQLite can undo changes to the schema; so a migration that fails leaves nothing behind. */
class TransactionalAdapter extends SqliteAdapter {
  override get supportsTransactionalDdl(): boolean {
    return true;
  }
}

export class LibsqlDialect extends SqliteDialect {
  readonly #config: SqliteDialectConfig;

  constructor(config: SqliteDialectConfig) {
    super(config);
    this.#config = config;
  }

  override createDriver(): Driver {
    return new ImmediateDriver(this.#config);
  }

  override createAdapter(): DialectAdapter {
    return new TransactionalAdapter();
  }
}

/** What is worth keeping prepared; changes of the schema and settings are asked for once. */
const repeats = /^(select|insert|update|delete|begin|commit)\b/i;

/** Prepares a statement that comes again only once, and keeps the last `most` of them. */
export const keepingStatements = (database: SqliteDatabase, most: number): SqliteDatabase => {
  const kept = new Map<string, SqliteStatement>();
  return {
    prepare(sql) {
      if (!repeats.test(sql)) return database.prepare(sql);
      const statement = kept.get(sql) ?? database.prepare(sql);
      kept.delete(sql);
      kept.set(sql, statement);
      for (const oldest of kept.keys()) {
        if (kept.size <= most) break;
        kept.delete(oldest);
      }
      return statement;
    },
    close() {
      kept.clear();
      database.close();
    },
  };
};
