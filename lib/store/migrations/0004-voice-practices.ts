import { sql, type Kysely, type Migration } from 'kysely';

const refuse = `select raise(abort, 'voice_practices is never changed, only added to')`;

/** What people's practices of their voice have found out; the newest with a speech model counts. */
export const voicePractices: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of [
      `create table voice_practices (
        entry integer primary key, id text not null unique, person text not null references people,
        model text not null, at text not null, practice text not null
      ) strict`,
      `create index practices_of_person on voice_practices (person, model, entry)`,
      `create trigger voice_practices_no_update before update on voice_practices begin ${refuse}; end`,
      `create trigger voice_practices_no_delete before delete on voice_practices begin ${refuse}; end`,
      `create trigger voice_practices_no_replace before insert on voice_practices
        when exists (select 1 from voice_practices where rowid = new.rowid or id = new.id)
        begin ${refuse}; end`,
    ])
      await sql.raw(statement).execute(db);
  },
};
