import { sql, type Kysely, type Migration } from 'kysely';

/** What else is known of the shop: its adapters and how it wants things done. */
export const shopFacts: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await sql`alter table shop add column facts text not null default '{}'`.execute(db);
  },
};
