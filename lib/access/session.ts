import { createHash, randomBytes } from 'node:crypto';
import { personSchema, type Person } from '../people';
import type { Store } from '../store';

/** Who is signed on at which kiosk, in which bay, and until when. */
export interface Session {
  readonly person: Person;
  readonly bay: string;
  readonly device: string;
  readonly endsAtMs: number;
}

/** A shift with its breaks and an overrun. */
export const sessionMs = 12 * 3_600_000;

/** Only the hash is stored: who reads the database cannot take over a session. */
const hashOf = (token: string): string => createHash('sha256').update(token).digest('hex');

/** Begins a session and returns its token, the value of the cookie. Sessions that have run out are swept away. */
export const beginSession = async (
  { db }: Store,
  { person, bay, device }: Omit<Session, 'endsAtMs'>,
  nowMs: number,
): Promise<string> => {
  const token = randomBytes(32).toString('base64url');
  await db.deleteFrom('sessions').where('ends_ms', '<=', nowMs).execute();
  await db
    .insertInto('sessions')
    .values({
      token_hash: hashOf(token),
      person: person.id,
      bay,
      device,
      began_ms: nowMs,
      ends_ms: nowMs + sessionMs,
    })
    .execute();
  return token;
};

/** The session of a token, if it has not run out and was begun on this kiosk. */
export const findSession = async (
  { db }: Store,
  token: string,
  device: string,
  nowMs: number,
): Promise<Session | undefined> => {
  const row = await db
    .selectFrom('sessions')
    .innerJoin('people', 'people.id', 'sessions.person')
    .select(['people.id', 'people.name', 'people.role', 'bay', 'device', 'ends_ms'])
    .where('token_hash', '=', hashOf(token))
    .where('device', '=', device)
    .where('ends_ms', '>', nowMs)
    .executeTakeFirst();
  if (row === undefined) return undefined;
  const { id, name, role, bay, ends_ms } = row;
  return { person: personSchema.parse({ id, name, role }), bay, device, endsAtMs: ends_ms };
};

/** Ends a session; one that is not there is ended already. */
export const endSession = async ({ db }: Store, token: string): Promise<void> => {
  await db.deleteFrom('sessions').where('token_hash', '=', hashOf(token)).execute();
};
