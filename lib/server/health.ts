import { sql } from 'kysely';
import { answer } from './problem';
import type { Endpoint } from './route';

/** GET /api/health: whether the database answers, how it is set, and whether kiosks get a speech model. No secrets. */
export const readHealth: Endpoint<unknown> = async ({ store, hasSpeechModel }) => {
  await sql`select 1`.execute(store.db);
  const { journal_mode, synchronous } = store.pragmas;
  const database = { journalMode: journal_mode, synchronous: synchronous === 2 ? 'full' : 'other' };
  return answer({ ok: true, database, speechModel: await hasSpeechModel() });
};
