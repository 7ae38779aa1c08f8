import { sql } from 'kysely';
import { answer, problem, text } from './problem';
import type { Endpoint } from './route';

/** GET /api/health: whether the database answers, how it is set, and whether kiosks get a speech model. No secrets. */
export const readHealth: Endpoint<unknown> = async ({ store, hasSpeechModel }) => {
  await sql`select 1`.execute(store.db);
  const { journal_mode, synchronous } = store.pragmas;
  const database = { journalMode: journal_mode, synchronous: synchronous === 2 ? 'full' : 'other' };
  return answer({ ok: true, database, speechModel: await hasSpeechModel() });
};

/** Less than this, and a server takes no more work: a shift of one bay needs some 20 MB with its sound clips. */
const leastFreeBytes = 200_000_000;

/**
 * GET /api/ready: whether this server should be given work: its database can be written and there is room on its disk.
 * 503 with the reason where not, so that a balancer or a supervisor leaves it out and a person sees why.
 */
export const readReady: Endpoint<unknown> = async ({ store, freeBytes }) => {
  // Changes no row, and still needs the right to write.
  await store.db.deleteFrom('sessions').where('token_hash', '=', '').execute();
  const free = await freeBytes();
  return free < leastFreeBytes
    ? problem('unavailable', `Only ${Math.floor(free / 1e6)} MB are free on the disk. Make room.`)
    : answer({ ready: true, freeMb: Math.floor(free / 1e6) });
};

/** GET /api/metrics: what this process counts, for Prometheus. Nothing in it is about a person or a vehicle. */
export const readMetrics: Endpoint<unknown> = async ({ metrics }) =>
  text(await metrics.text(), metrics.contentType);
