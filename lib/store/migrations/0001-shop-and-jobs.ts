import { sql, type Kysely, type Migration } from 'kysely';

/** Triggers against any change. `insert or replace` deletes without asking the delete trigger, so inserts are looked at too. */
const neverChanged = (table: string, sameRow: string): readonly string[] => {
  const refuse = `select raise(abort, '${table} is never changed, only added to')`;
  return [
    `create trigger ${table}_no_update before update on ${table} begin ${refuse}; end`,
    `create trigger ${table}_no_delete before delete on ${table} begin ${refuse}; end`,
    `create trigger ${table}_no_replace before insert on ${table}
      when exists (select 1 from ${table} where rowid = new.rowid or ${sameRow})
      begin ${refuse}; end`,
  ];
};

const statements = [
  `create table shop (
    id integer primary key check (id = 1), name text not null, set_up_at text not null
  ) strict`,
  `create table people (
    id text primary key, place integer not null, name text not null,
    role text not null check (role in ('mechanic', 'foreman', 'writer', 'admin'))
  ) strict`,
  `create table pins (person text primary key references people, hash text not null) strict`,
  `create table bays (id text primary key, place integer not null, name text not null) strict`,
  `create table torque_tools (
    id text primary key, place integer not null, facts text not null
  ) strict`,
  `create table procedure_revisions (
    procedure text not null, revision integer not null check (revision > 0),
    title text not null, published_at text not null, content text not null,
    primary key (procedure, revision)
  ) strict`,
  `create table jobs (
    id text primary key, bay text not null references bays,
    procedure text not null, revision integer not null, vehicle text not null,
    phase text not null check (phase in ('running', 'held', 'closed')),
    seq integer not null check (seq > 0),
    opened_at text not null, opened_by text not null, closed_at text,
    foreign key (procedure, revision) references procedure_revisions
  ) strict`,
  `create unique index one_open_job_a_bay on jobs (bay) where phase <> 'closed'`,
  `create table job_events (
    entry integer primary key, id text not null unique, job text not null references jobs,
    seq integer not null check (seq > 0), type text not null, at text not null,
    actor text not null, bay text not null, stored_at text not null, event text not null,
    unique (job, seq)
  ) strict`,
  `create table clips (
    id text primary key, sha256 text not null, bytes integer not null,
    person text not null, device text not null, stored_at text not null
  ) strict`,
  `create table sessions (
    token_hash text primary key, person text not null references people,
    bay text not null references bays, device text not null,
    began_ms integer not null, ends_ms integer not null
  ) strict`,
  `create table pin_attempts (
    counter text primary key, failures integer not null, last_failed_ms integer not null
  ) strict`,
  `create table known_kiosks (
    person text not null references people, device text not null, first_ms integer not null,
    primary key (person, device)
  ) strict`,
  ...neverChanged('job_events', 'id = new.id or (job = new.job and seq = new.seq)'),
  ...neverChanged('procedure_revisions', 'procedure = new.procedure and revision = new.revision'),
];

export const shopAndJobs: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of statements) await sql.raw(statement).execute(db);
  },
};
