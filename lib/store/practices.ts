import { keptPracticeSchema, type KeptPractice, type PracticeRecord } from '../practice';
import { canonicalJson } from './canonical-json';
import type { Store } from './open';

/** What became of a practice that was to be kept. `idReused`: another is kept under its id. */
export type PracticeKept = 'kept' | 'keptBefore' | 'idReused';

/** Keeps a practice of a person's voice beside those before it. The same one again changes nothing. */
export const keepPractice = (
  { db }: Store,
  person: string,
  practice: PracticeRecord,
  now: Date,
): Promise<PracticeKept> =>
  db.transaction().execute(async (write) => {
    const { id, model } = practice;
    const text = canonicalJson(practice);
    const before = await write
      .selectFrom('voice_practices')
      .select(['person', 'practice'])
      .where('id', '=', id)
      .executeTakeFirst();
    if (before !== undefined)
      return before.person === person && before.practice === text ? 'keptBefore' : 'idReused';
    await write
      .insertInto('voice_practices')
      .values({ id, person, model, at: now.toISOString(), practice: text })
      .execute();
    return 'kept';
  });

/** A person's newest practice with each speech model, the newest first. */
export const practicesOf = async (
  { db }: Store,
  person: string,
): Promise<readonly KeptPractice[]> => {
  const rows = await db
    .selectFrom('voice_practices')
    .select(({ fn }) => fn.max('entry').as('entry'))
    .where('person', '=', person)
    .groupBy('model')
    .execute();
  if (rows.length === 0) return [];
  const newest = await db
    .selectFrom('voice_practices')
    .select(['at', 'practice'])
    .where(
      'entry',
      'in',
      rows.map(({ entry }) => entry),
    )
    .orderBy('entry', 'desc')
    .execute();
  // One kept under other rules than today's (a phrase no longer practised) counts no more.
  return newest.flatMap(({ at, practice }) => {
    const body: unknown = JSON.parse(practice);
    const read = keptPracticeSchema.safeParse(
      typeof body === 'object' && body !== null ? { ...body, person, at } : undefined,
    );
    return read.success ? [read.data] : [];
  });
};
