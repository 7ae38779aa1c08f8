import {
  CompiledQuery,
  SqliteAdapter,
  SqliteDialect,
  SqliteDriver,
  type DatabaseConnection,
  type DialectAdapter,
  type Driver,
  type SqliteDialectConfig,
} from 'kysely';

/** Takes the write lock at once, so that what a transaction has read still holds when it writes. */
class ImmediateDriver extends SqliteDriver {
  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw('begin immediate'));
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
