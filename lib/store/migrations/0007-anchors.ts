import { sql, type Kysely, type Migration } from 'kysely';

const neverChanged = (table: string, sameRow: string): readonly string[] => {
  const refuse = `select raise(abort, '${table} is never changed, only added to')`;
  return [
    `create trigger ${table}_no_update before update on ${table} begin ${refuse}; end`,
    `create trigger ${table}_no_delete before delete on ${table} begin ${refuse}; end`,
    `create trigger ${table}_no_replace before insert on ${table}
      when exists (select 1 from ${table} where ${sameRow}) begin ${refuse}; end`,
  ];
};

const statements = [
  `create table anchors (
    number integer primary key check (number > 0), day text not null, made_at text not null,
    entry integer not null, previous text not null, hash text not null check (length(hash) = 64)
  ) strict`,
  // No reference to jobs: a job that is gone must not take its anchored head with it.
  `create table anchor_heads (
    number integer not null references anchors, job text not null,
    seq integer not null check (seq > 0), link text not null check (length(link) = 64),
    primary key (number, job)
  ) strict, without rowid`,
  ...neverChanged('anchors', 'number = new.number'),
  ...neverChanged('anchor_heads', 'number = new.number and job = new.job'),
];

/** A daily anchor over the chains of all jobs; see lib/store/anchors. */
export const anchors: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of statements) await sql.raw(statement).execute(db);
  },
};
