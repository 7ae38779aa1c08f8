import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Libsql from 'libsql';
import { Kysely, Migrator } from 'kysely';
import { z } from 'zod';
import { canonicalJson } from '@/lib/store';
import { linkOf, NO_LINK } from '@/lib/store/chain';
import { LibsqlDialect } from '@/lib/store/dialect';
import { migrations } from '@/lib/store/migrations';
import { held, jobId, noon, opened, resumed, smallShop, threeSteps, vehicle } from './small-shop';

/** What stands in a database of each released version: job 1, opened, held and resumed. */
export const releasedEvents = [opened(1), held(1, 2), resumed(1, 3)];

/** Makes the tables of a version, by its last migration, in a new file. */
export const migrateTo = async (file: string, version: string): Promise<Libsql.Database> => {
  const database = new Libsql(file);
  const db = new Kysely<unknown>({ dialect: new LibsqlDialect({ database }) });
  const provider = { getMigrations: () => Promise.resolve(migrations) };
  const { error } = await new Migrator({ db, provider }).migrateTo(version);
  if (error !== undefined) throw new Error(`no version ${version}`, { cause: error });
  return database;
};

const tableSchema = z.object({ name: z.string(), sql: z.string() });

/** The statements that make a database what it is. */
export const schemaOf = (database: Libsql.Database): readonly string[] =>
  z
    .array(tableSchema)
    .parse(
      database
        .prepare(
          `select name, sql from sqlite_master where sql is not null
           order by type = 'table' desc, type = 'index' desc, rowid`,
        )
        .all(),
    )
    .map(({ sql }) => sql);

const namesOf = (database: Libsql.Database): readonly string[] =>
  z
    .array(z.object({ name: z.string() }))
    .parse(database.prepare(`select name from sqlite_master where type = 'table'`).all())
    .map(({ name }) => name);

/** By statements that every version understands: later columns have defaults. */
const fill = (database: Libsql.Database): void => {
  const insert = (table: string, row: Readonly<Record<string, string | number | null>>): void => {
    const names = Object.keys(row);
    database
      .prepare(`insert into ${table} (${names.join()}) values (${names.map(() => '?').join()})`)
      .run(Object.values(row));
  };
  insert('shop', { id: 1, name: smallShop.name, set_up_at: noon.toISOString() });
  for (const [place, { id, name }] of smallShop.bays.entries()) insert('bays', { id, place, name });
  for (const [place, { id, name, role }] of smallShop.people.entries())
    insert('people', { id, place, name, role });
  const { procedure, revision, title, publishedAt: published_at } = threeSteps;
  const content = canonicalJson(threeSteps);
  insert('procedure_revisions', { procedure, revision, title, published_at, content });
  insert('jobs', {
    id: jobId(1),
    bay: 'bay-1',
    procedure,
    revision,
    vehicle: canonicalJson(vehicle),
    phase: 'running',
    seq: 3,
    opened_at: '2025-03-01T12:00:00+00:00',
    opened_by: 'ada',
    closed_at: null,
  });
  const linked = namesOf(database).includes('job_links');
  let link = NO_LINK;
  for (const event of releasedEvents) {
    const { id, job, seq, at, actor, happening } = event;
    const text = canonicalJson(event);
    link = linkOf(link, text);
    insert('job_events', {
      ...{ id, job, seq, type: happening.type, at, actor, bay: 'bay-1' },
      ...{ stored_at: noon.toISOString(), event: text },
    });
    if (linked) insert('job_links', { job, seq, link });
  }
};

const literal = (value: string | number | null): string =>
  value === null || typeof value === 'number' ? String(value) : `'${value.replaceAll("'", "''")}'`;

const rowsOf = (database: Libsql.Database, table: string): readonly string[] =>
  z
    .array(z.record(z.string(), z.union([z.string(), z.number(), z.null()])))
    .parse(database.prepare(`select * from ${table}`).all())
    .map((row) => (table === 'kysely_migration' ? { ...row, timestamp: noon.toISOString() } : row))
    .map((row) => `insert into ${table} values (${Object.values(row).map(literal).join(', ')})`);

/** A small database of a version as one SQL text. */
export const releaseText = async (version: string): Promise<string> => {
  const folder = mkdtempSync(join(tmpdir(), 'baycall-release-'));
  try {
    const database = await migrateTo(join(folder, 'baycall.db'), version);
    fill(database);
    const schema = schemaOf(database);
    const isTable = (statement: string): boolean => /^create table/i.test(statement);
    return [
      ...schema.filter(isTable),
      ...namesOf(database).flatMap((table) => rowsOf(database, table)),
      ...schema.filter((statement) => !isTable(statement)),
    ]
      .map((statement) => `${statement};\n`)
      .join('\n');
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};

// Run as a program at each release: node --import tsx tests/store/release.ts VERSION > tests/store/released/VERSION.sql
const [program, version] = process.argv.slice(1);
if (program?.endsWith('release.ts') === true && version !== undefined)
  process.stdout.write(await releaseText(version));
