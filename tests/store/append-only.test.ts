import { sql } from 'kysely';
import { expect, test } from 'vitest';
import { publishRevision } from '@/lib/store/procedures';
import { freshStore } from './fresh-store';
import { jobId, opened, threeSteps } from './small-shop';

test('the database itself refuses to change or delete a stored event', async () => {
  const { store, log } = await freshStore();
  await log.append(jobId(1), [opened(1)]);
  await expect(sql`update job_events set actor = 'finn'`.execute(store.db)).rejects.toThrow(
    'job_events is never changed, only added to',
  );
  await expect(sql`delete from job_events`.execute(store.db)).rejects.toThrow(
    'job_events is never changed, only added to',
  );
  await expect(
    sql`insert or replace into job_events select * from job_events`.execute(store.db),
  ).rejects.toThrow('job_events is never changed, only added to');
  const rows = await store.db.selectFrom('job_events').select('actor').execute();
  expect(rows).toEqual([{ actor: 'ada' }]);
});

test('the database itself refuses to change or delete a published revision', async () => {
  const { store } = await freshStore();
  await expect(
    sql`update procedure_revisions set title = 'Other'`.execute(store.db),
  ).rejects.toThrow('procedure_revisions is never changed, only added to');
  await expect(sql`delete from procedure_revisions`.execute(store.db)).rejects.toThrow(
    'procedure_revisions is never changed, only added to',
  );
});

test('publishing the same revision again changes nothing, another text under its number is refused', async () => {
  const { store } = await freshStore();
  await publishRevision(store.db, threeSteps);
  await expect(publishRevision(store.db, { ...threeSteps, title: 'Other' })).rejects.toThrow(
    'procedure_revisions is never changed, only added to',
  );
  await expect(
    sql`insert or replace into procedure_revisions select * from procedure_revisions`.execute(
      store.db,
    ),
  ).rejects.toThrow('procedure_revisions is never changed, only added to');
  const rows = await store.db.selectFrom('procedure_revisions').select('title').execute();
  expect(rows).toEqual([{ title: 'Three steps' }]);
});

test('a revision with a fault is not published, and the fault is named', async () => {
  const { store } = await freshStore();
  const steps = threeSteps.steps.map((step) => ({ ...step, after: ['four'] }));
  await expect(publishRevision(store.db, { ...threeSteps, revision: 2, steps })).rejects.toThrow(
    '“Three steps” cannot be published. steps/one: There is no step “four”: add it or correct the name.',
  );
  const rows = await store.db.selectFrom('procedure_revisions').select('revision').execute();
  expect(rows).toEqual([{ revision: 1 }]);
});
