CREATE TABLE "kysely_migration" ("name" varchar(255) not null primary key, "timestamp" varchar(255) not null);

CREATE TABLE "kysely_migration_lock" ("id" varchar(255) not null primary key, "is_locked" integer default 0 not null);

CREATE TABLE shop (
    id integer primary key check (id = 1), name text not null, set_up_at text not null
  , facts text not null default '{}') strict;

CREATE TABLE people (
    id text primary key, place integer not null, name text not null,
    role text not null check (role in ('mechanic', 'foreman', 'writer', 'admin'))
  ) strict;

CREATE TABLE pins (person text primary key references people, hash text not null) strict;

CREATE TABLE bays (id text primary key, place integer not null, name text not null) strict;

CREATE TABLE torque_tools (
    id text primary key, place integer not null, facts text not null
  ) strict;

CREATE TABLE procedure_revisions (
    procedure text not null, revision integer not null check (revision > 0),
    title text not null, published_at text not null, content text not null,
    primary key (procedure, revision)
  ) strict;

CREATE TABLE jobs (
    id text primary key, bay text not null references bays,
    procedure text not null, revision integer not null, vehicle text not null,
    phase text not null check (phase in ('running', 'held', 'closed')),
    seq integer not null check (seq > 0),
    opened_at text not null, opened_by text not null, closed_at text,
    foreign key (procedure, revision) references procedure_revisions
  ) strict;

CREATE TABLE job_events (
    entry integer primary key, id text not null unique, job text not null references jobs,
    seq integer not null check (seq > 0), type text not null, at text not null,
    actor text not null, bay text not null, stored_at text not null, event text not null,
    unique (job, seq)
  ) strict;

CREATE TABLE clips (
    id text primary key, sha256 text not null, bytes integer not null,
    person text not null, device text not null, stored_at text not null
  ) strict;

CREATE TABLE sessions (
    token_hash text primary key, person text not null references people,
    bay text not null references bays, device text not null,
    began_ms integer not null, ends_ms integer not null
  ) strict;

CREATE TABLE pin_attempts (
    counter text primary key, failures integer not null, last_failed_ms integer not null
  ) strict;

CREATE TABLE known_kiosks (
    person text not null references people, device text not null, first_ms integer not null,
    primary key (person, device)
  ) strict;

insert into kysely_migration values ('0001-shop-and-jobs', '2025-03-01T12:00:00.000Z');

insert into kysely_migration values ('0002-shop-facts', '2025-03-01T12:00:00.000Z');

insert into kysely_migration_lock values ('migration_lock', 0);

insert into shop values (1, 'Test shop', '2025-03-01T12:00:00.000Z', '{}');

insert into people values ('ada', 0, 'Ada', 'mechanic');

insert into people values ('finn', 1, 'Finn', 'foreman');

insert into bays values ('bay-1', 0, 'Bay 1');

insert into bays values ('bay-2', 1, 'Bay 2');

insert into procedure_revisions values ('three-steps', 1, 'Three steps', '2025-01-02T08:00:00+00:00', '{"appliesTo":"any","consumables":[],"drawings":[],"fluids":[],"groups":[],"kit":[],"parts":[],"procedure":"three-steps","publishedAt":"2025-01-02T08:00:00+00:00","revision":1,"source":{"revision":"A","sheet":"T-1"},"steps":[{"after":[],"asks":[],"bookMinutes":1,"cautions":[],"effects":[],"handStart":false,"id":"one","instruction":"Do one.","oneShot":false,"powerTool":"notUsed","shows":[],"title":"one"},{"after":[],"asks":[],"bookMinutes":1,"cautions":[],"effects":[],"handStart":false,"id":"two","instruction":"Do two.","oneShot":false,"powerTool":"notUsed","shows":[],"title":"two"},{"after":[],"asks":[],"bookMinutes":1,"cautions":[],"effects":[],"handStart":false,"id":"three","instruction":"Do three.","oneShot":false,"powerTool":"notUsed","shows":[],"title":"three"}],"summary":"Nothing is taken off.","title":"Three steps","tools":[]}');

insert into jobs values ('00000000-0000-4000-8000-000000000001', 'bay-1', 'three-steps', 1, '{"description":"Test van","plate":"TE 1"}', 'running', 3, '2025-03-01T12:00:00+00:00', 'ada', null);

insert into job_events values (1, '00000001-0000-4000-9000-000000000001', '00000000-0000-4000-8000-000000000001', 1, 'jobOpened', '2025-03-01T12:00:00+00:00', 'ada', 'bay-1', '2025-03-01T12:00:00.000Z', '{"actor":"ada","at":"2025-03-01T12:00:00+00:00","device":"kiosk-1","format":1,"happening":{"bay":"bay-1","procedure":"three-steps","revision":1,"type":"jobOpened","vehicle":{"description":"Test van","plate":"TE 1"}},"id":"00000001-0000-4000-9000-000000000001","input":{"by":"touch"},"job":"00000000-0000-4000-8000-000000000001","role":"mechanic","seq":1}');

insert into job_events values (2, '00000001-0000-4000-9000-000000000002', '00000000-0000-4000-8000-000000000001', 2, 'jobHeld', '2025-03-01T12:00:00+00:00', 'ada', 'bay-1', '2025-03-01T12:00:00.000Z', '{"actor":"ada","at":"2025-03-01T12:00:00+00:00","device":"kiosk-1","format":1,"happening":{"reason":{"text":"parts"},"type":"jobHeld"},"id":"00000001-0000-4000-9000-000000000002","input":{"by":"touch"},"job":"00000000-0000-4000-8000-000000000001","role":"mechanic","seq":2}');

insert into job_events values (3, '00000001-0000-4000-9000-000000000003', '00000000-0000-4000-8000-000000000001', 3, 'jobResumed', '2025-03-01T12:00:00+00:00', 'ada', 'bay-1', '2025-03-01T12:00:00.000Z', '{"actor":"ada","at":"2025-03-01T12:00:00+00:00","device":"kiosk-1","format":1,"happening":{"type":"jobResumed"},"id":"00000001-0000-4000-9000-000000000003","input":{"by":"touch"},"job":"00000000-0000-4000-8000-000000000001","role":"mechanic","seq":3}');

CREATE UNIQUE INDEX one_open_job_a_bay on jobs (bay) where phase <> 'closed';

CREATE TRIGGER job_events_no_update before update on job_events begin select raise(abort, 'job_events is never changed, only added to'); end;

CREATE TRIGGER job_events_no_delete before delete on job_events begin select raise(abort, 'job_events is never changed, only added to'); end;

CREATE TRIGGER job_events_no_replace before insert on job_events
      when exists (select 1 from job_events where rowid = new.rowid or id = new.id or (job = new.job and seq = new.seq))
      begin select raise(abort, 'job_events is never changed, only added to'); end;

CREATE TRIGGER procedure_revisions_no_update before update on procedure_revisions begin select raise(abort, 'procedure_revisions is never changed, only added to'); end;

CREATE TRIGGER procedure_revisions_no_delete before delete on procedure_revisions begin select raise(abort, 'procedure_revisions is never changed, only added to'); end;

CREATE TRIGGER procedure_revisions_no_replace before insert on procedure_revisions
      when exists (select 1 from procedure_revisions where rowid = new.rowid or procedure = new.procedure and revision = new.revision)
      begin select raise(abort, 'procedure_revisions is never changed, only added to'); end;
