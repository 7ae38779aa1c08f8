import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { sql } from 'kysely';
import { openStore, verifyAll } from '../../store';
import { databaseFile } from '../../store/files';

/** Run as a child process, so that the database is closed for certain afterwards: looks at what became of everything. */
const [folder = '', acknowledged = ''] = process.argv.slice(2);

const opened = await openStore(databaseFile(folder));
if (!opened.ok) throw new Error(opened.error);
const { db } = opened.value;
const seen = await verifyAll(db);
const rows = await db.selectFrom('job_events').select(['id', 'event']).execute();
const stored = new Map(rows.map(({ id, event }) => [id, event]));
const lines = existsSync(acknowledged)
  ? readFileSync(acknowledged, 'utf8')
      .split('\n')
      .filter((line) => line !== '')
  : [];
const lost = lines.filter((line) => stored.get(line.slice(0, 36)) !== line.slice(37)).length;

const fixed = ['shop', 'people', 'pins', 'bays', 'torque_tools', 'procedure_revisions'];
const digest = createHash('sha256');
for (const table of fixed) {
  const all = await sql`select * from ${sql.table(table)} order by 1, 2`.execute(db);
  digest.update(JSON.stringify(all.rows));
}
process.send?.({
  events: rows.length,
  acknowledged: lines.length,
  lost,
  faults: seen.faults,
  anchors: seen.anchors,
  fixed: digest.digest('hex'),
});
