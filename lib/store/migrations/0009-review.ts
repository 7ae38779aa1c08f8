import { sql, type Kysely, type Migration } from 'kysely';

const common = `job text not null, seq integer not null, at_ms integer not null,
    bay text not null, procedure text not null, revision integer not null,
    actor text not null, role text not null`;

const statements = [
  // Which jobs are in the tables below, and by which version of how they are made.
  `create table review_state (
    id integer primary key check (id = 1), version integer not null, complete integer not null
  ) strict`,
  `create table review_jobs (${common}, primary key (job)) strict, without rowid`,
  `create index review_jobs_at on review_jobs (at_ms, bay, procedure, revision, role)`,
  `create table review_readings (
    ${common}, step text not null, ask text not null, fastener text not null,
    value real not null, lower real, upper real, target real, verdict text not null, tool text
  ) strict`,
  `create index review_readings_joint on review_readings (procedure, ask, fastener, at_ms)`,
  `create index review_readings_at
    on review_readings (at_ms, bay, procedure, revision, step, ask, fastener, role)`,
  `create table review_steps (
    ${common}, step text not null, minutes real not null,
    primary key (procedure, step, at_ms, job)
  ) strict, without rowid`,
  `create table review_deviations (
    ${common}, id text not null, kind text not null, step text not null, fastener text, ask text,
    facts text not null, decision text, decided text, primary key (job, id)
  ) strict`,
  `create index review_deviations_at on review_deviations
    (at_ms, bay, procedure, revision, step, ask, fastener, role, kind, decision)`,
  `create table review_reworks (
    ${common}, step text not null, facts text not null, spent_before_ms integer not null,
    followed text not null, spent_after_ms integer, primary key (job, seq)
  ) strict`,
  `create index review_reworks_at on review_reworks (at_ms, bay, procedure, revision, step, role)`,
  `create index review_reworks_step on review_reworks (job, step, followed)`,
  `create table review_holds (
    ${common}, step text not null, reason text not null, facts text not null, ended_ms integer,
    primary key (job, seq)
  ) strict`,
  `create index review_holds_at
    on review_holds (at_ms, bay, procedure, revision, step, role, reason, ended_ms)`,
  // Counted by half hours: of what is heard there is more than of anything else. By phrase, as it is asked for.
  `create table review_hearings (
    phrase text not null, half_hour_ms integer not null, bay text not null,
    procedure text not null, revision integer not null, role text not null,
    heard integer not null, asked_back integer not null, declined integer not null,
    taken_back integer not null, said_again integer not null,
    primary key (phrase, half_hour_ms, bay, procedure, revision, role)
  ) strict, without rowid`,
  // A foreman's decisions that a sheet wants changing: no projection, but a record of their own.
  `create table sheet_marks (
    id text primary key, procedure text not null, revision integer not null, step text,
    note text not null, seen_job text references jobs, seen_seq integer,
    marked_by text not null references people, marked_at text not null,
    done_by text references people, done_at text,
    foreign key (procedure, revision) references procedure_revisions
  ) strict`,
  `create index sheet_marks_of on sheet_marks (procedure, revision)`,
];

/** What the review after the shift asks, ready to be counted. All but the marks follows from the events. */
export const review: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of statements) await sql.raw(statement).execute(db);
  },
};
