import { sql, type Kysely, type Migration } from 'kysely';

/** Sounds are deleted after a time; that one was there, and when it went, stays. */
export const clipDeletion: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await sql`alter table clips add column deleted_at text`.execute(db);
  },
};
