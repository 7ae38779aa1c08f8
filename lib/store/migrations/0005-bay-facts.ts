import { sql, type Kysely, type Migration } from 'kysely';

/** What else is set for a bay: by which word its kiosk is called. */
export const bayFacts: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await sql`alter table bays add column facts text not null default '{}'`.execute(db);
  },
};
