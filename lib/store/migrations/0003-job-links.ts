import { sql, type Kysely, type Migration } from 'kysely';
import { linkOf, NO_LINK } from '../chain';

interface StoredEvent {
  readonly job: string;
  readonly seq: number;
  readonly event: string;
}

/** So many events are read at a time. */
const batch = 1000;

/** The events after a place in the order of jobs and numbers. */
const eventsAfter = async (db: Kysely<unknown>, job: string, seq: number) =>
  (
    await sql<StoredEvent>`select job, seq, event from job_events
      where (job, seq) > (${job}, ${seq}) order by job, seq limit ${batch}`.execute(db)
  ).rows;

/** Links what was stored before there were links. */
const linkAll = async (db: Kysely<unknown>): Promise<void> => {
  let at = { job: '', seq: 0, link: NO_LINK };
  for (;;) {
    const rows = await eventsAfter(db, at.job, at.seq);
    if (rows.length === 0) return;
    for (const { job, seq, event } of rows) {
      const link = linkOf(job === at.job ? at.link : NO_LINK, event);
      await sql`insert into job_links values (${job}, ${seq}, ${link})`.execute(db);
      at = { job, seq, link };
    }
  }
};

const refuse = `select raise(abort, 'job_links is never changed, only added to')`;

/** A chain through the events of each job, by which a changed record is found out. */
export const jobLinks: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await sql`create table job_links (
      job text not null references jobs, seq integer not null check (seq > 0),
      link text not null check (length(link) = 64), primary key (job, seq)
    ) strict, without rowid`.execute(db);
    await linkAll(db);
    for (const statement of [
      `create trigger job_links_no_update before update on job_links begin ${refuse}; end`,
      `create trigger job_links_no_delete before delete on job_links begin ${refuse}; end`,
      `create trigger job_links_no_replace before insert on job_links
        when exists (select 1 from job_links where job = new.job and seq = new.seq)
        begin ${refuse}; end`,
    ])
      await sql.raw(statement).execute(db);
  },
};
