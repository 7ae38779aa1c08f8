import type {
  HearingCounts,
  HearingKey,
  JobRow,
  ReadingRow,
  ReviewWrite,
  StepRow,
} from '../../review';
import { canonicalJson } from '../canonical-json';
import { compiledOnce } from '../compiled';
import type { Reader } from '../reader';

type Kind = ReviewWrite['kind'];
type Of<K extends Kind> = Extract<ReviewWrite, { kind: K }>;

const common = ({ job, seq, atMs, bay, procedure, revision, actor, role }: JobRow) => ({
  job,
  seq,
  at_ms: atMs,
  bay,
  procedure,
  revision,
  actor,
  role,
});

const readingRow = (row: ReadingRow) => ({
  ...common(row),
  step: row.step,
  ask: row.ask,
  fastener: row.fastener,
  value: row.value,
  lower: row.lower ?? null,
  upper: row.upper ?? null,
  target: row.target ?? null,
  verdict: row.verdict,
  tool: row.tool ?? null,
});

const stepRow = (row: StepRow) => ({ ...common(row), step: row.step, minutes: row.minutes });

const hearingRow = (key: HearingKey, add: HearingCounts) => ({
  half_hour_ms: key.halfHourMs,
  bay: key.bay,
  procedure: key.procedure,
  revision: key.revision,
  role: key.role,
  phrase: key.phrase,
  heard: add.heard,
  asked_back: add.askedBack,
  declined: add.declined,
  taken_back: add.takenBack,
  said_again: add.saidAgain,
});

const nobody: JobRow = {
  job: '',
  seq: 0,
  atMs: 0,
  bay: '',
  procedure: '',
  revision: 0,
  actor: '',
  role: 'mechanic',
};
const blankReading = readingRow({
  ...nobody,
  step: '',
  ask: '',
  fastener: '',
  value: 0,
  verdict: 'inSpec',
});
const blankStep = stepRow({ ...nobody, step: '', minutes: 0 });
const blankHearing = hearingRow(
  { halfHourMs: 0, bay: '', procedure: '', revision: 0, role: 'mechanic', phrase: '' },
  { heard: 0, askedBack: 0, declined: 0, takenBack: 0, saidAgain: 0 },
);

const insertReadings = compiledOnce((db, count) =>
  db.insertInto('review_readings').values(Array.from({ length: count }, () => blankReading)),
);
const insertSteps = compiledOnce((db, count) =>
  db.insertInto('review_steps').values(Array.from({ length: count }, () => blankStep)),
);
const countHearings = compiledOnce((db, count) =>
  db
    .insertInto('review_hearings')
    .values(Array.from({ length: count }, () => blankHearing))
    .onConflict((conflict) =>
      conflict
        .columns(['phrase', 'half_hour_ms', 'bay', 'procedure', 'revision', 'role'])
        .doUpdateSet((row) => ({
          heard: row('review_hearings.heard', '+', row.ref('excluded.heard')),
          asked_back: row('review_hearings.asked_back', '+', row.ref('excluded.asked_back')),
          declined: row('review_hearings.declined', '+', row.ref('excluded.declined')),
          taken_back: row('review_hearings.taken_back', '+', row.ref('excluded.taken_back')),
          said_again: row('review_hearings.said_again', '+', row.ref('excluded.said_again')),
        })),
    ),
);

/** So many rows go into one statement. */
const together = 50;

type Insert = (db: Reader, count: number, parameters: readonly unknown[]) => Promise<unknown>;

const insertAll = async (
  db: Reader,
  insert: Insert,
  rows: readonly Readonly<Record<string, unknown>>[],
): Promise<void> => {
  for (let at = 0; at < rows.length; at += together) {
    const some = rows.slice(at, at + together);
    await insert(
      db,
      some.length,
      some.flatMap((row) => Object.values(row)),
    );
  }
};

/** Of one kind, in their order. */
const of = <K extends Kind>(writes: readonly ReviewWrite[], kind: K): readonly Of<K>[] =>
  writes.filter((write): write is Of<K> => write.kind === kind);

/** What comes seldom, or changes what was written before: one after another, in its order. */
const writeOne = async (db: Reader, write: ReviewWrite): Promise<void> => {
  switch (write.kind) {
    case 'job':
      await db.insertInto('review_jobs').values(common(write.row)).execute();
      return;
    case 'deviation': {
      const { row } = write;
      await db
        .insertInto('review_deviations')
        .values({
          ...common(row),
          id: row.id,
          kind: row.kind,
          step: row.step,
          fastener: row.fastener ?? null,
          ask: row.ask ?? null,
          facts: canonicalJson(row.facts),
          decision: null,
          decided: null,
        })
        .execute();
      return;
    }
    case 'decided':
      await db
        .updateTable('review_deviations')
        .set({ decision: write.word, decided: canonicalJson(write.decided) })
        .where('job', '=', write.job)
        .where('id', '=', write.id)
        .execute();
      return;
    case 'rework': {
      const { row } = write;
      await db
        .insertInto('review_reworks')
        .values({
          ...common(row),
          step: row.step,
          facts: canonicalJson(row.facts),
          spent_before_ms: row.spentBeforeMs,
          followed: 'stillOpen',
          spent_after_ms: null,
        })
        .execute();
      return;
    }
    case 'followed':
      await db
        .updateTable('review_reworks')
        // Opened again: the time that was measured when it was done stays.
        .set(
          write.to === 'reopenedAgain'
            ? { followed: write.to }
            : { followed: write.to, spent_after_ms: write.spentMs },
        )
        .where('job', '=', write.job)
        .where('step', '=', write.step)
        .where('followed', '=', write.from)
        .execute();
      return;
    case 'hold': {
      const { row } = write;
      await db
        .insertInto('review_holds')
        .values({
          ...common(row),
          step: row.step,
          reason: row.reason,
          facts: canonicalJson({ why: row.why }),
          ended_ms: null,
        })
        .execute();
      return;
    }
    case 'resumed':
      await db
        .updateTable('review_holds')
        .set({ ended_ms: write.atMs })
        .where('job', '=', write.job)
        .where('ended_ms', 'is', null)
        .execute();
      return;
    case 'reading':
    case 'step':
    case 'hearing':
      return;
  }
};

/** Writes what some events of one job mean for the review, in their order. */
export const writeReview = async (db: Reader, writes: readonly ReviewWrite[]): Promise<void> => {
  for (const write of writes) await writeOne(db, write);
  await insertAll(
    db,
    insertReadings,
    of(writes, 'reading').map(({ row }) => readingRow(row)),
  );
  await insertAll(
    db,
    insertSteps,
    of(writes, 'step').map(({ row }) => stepRow(row)),
  );
  await insertAll(
    db,
    countHearings,
    of(writes, 'hearing').map(({ key, add }) => hearingRow(key, add)),
  );
};

const inReview = compiledOnce((db) =>
  db.selectFrom('review_jobs').select('job').where('job', '=', ''),
);

/**
 * The same for events just stored, in their transaction. A job that is not in the review yet, as after an update, is
 * left to `rebuildReview`, which takes it in as a whole.
 */
export const reviewStored = async (
  db: Reader,
  job: string,
  writes: readonly ReviewWrite[],
): Promise<void> => {
  if (writes.length === 0) return;
  const isNew = writes[0]?.kind === 'job';
  if (!isNew && (await inReview(db, 1, [job])).rows.length === 0) return;
  await writeReview(db, writes);
};
