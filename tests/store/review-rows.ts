import type { Store } from '@/lib/store';

/** Everything that the review holds, in an order of its own. */
export const reviewRows = async ({ db }: Store): Promise<Readonly<Record<string, unknown>>> => ({
  jobs: await db.selectFrom('review_jobs').selectAll().orderBy('job').execute(),
  readings: await db
    .selectFrom('review_readings')
    .selectAll()
    .orderBy('job')
    .orderBy('seq')
    .execute(),
  steps: await db.selectFrom('review_steps').selectAll().orderBy('job').orderBy('seq').execute(),
  deviations: await db
    .selectFrom('review_deviations')
    .selectAll()
    .orderBy('job')
    .orderBy('id')
    .execute(),
  reworks: await db
    .selectFrom('review_reworks')
    .selectAll()
    .orderBy('job')
    .orderBy('seq')
    .execute(),
  holds: await db.selectFrom('review_holds').selectAll().orderBy('job').orderBy('seq').execute(),
  hearings: await db
    .selectFrom('review_hearings')
    .selectAll()
    .orderBy('half_hour_ms')
    .orderBy('bay')
    .orderBy('procedure')
    .orderBy('role')
    .orderBy('phrase')
    .execute(),
});
