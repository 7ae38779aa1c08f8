import { sql } from 'kysely';
import { z } from 'zod';
import { verdicts } from '../../metrology';
import {
  hearingSection,
  jointSection,
  jointsOf,
  jointUnit,
  knownLimits,
  mostPoints,
  mostRuns,
  stepTimesOf,
  type HearingSection,
  type JointSection,
  type OverviewSection,
  type StepTimesSection,
  type StoredReading,
} from '../../review';
import type { Reader } from '../reader';
import { parsed, type Names } from './names';
import { rowsAsked, type Asked } from './narrow';
import { newestSheet, sheetOf } from './sheets';

interface ReadingRow {
  readonly job: string;
  readonly seq: number;
  readonly at_ms: number;
  readonly revision: number;
  readonly value: number;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly target: number | null;
  readonly verdict: string;
  readonly tool: string | null;
}

const toReading = (row: ReadingRow, names: Names): StoredReading => ({
  job: row.job,
  seq: row.seq,
  at: new Date(row.at_ms).toISOString(),
  revision: row.revision,
  value: row.value,
  ...knownLimits(row),
  verdict: z.enum(verdicts).parse(row.verdict),
  ...(row.tool === null ? {} : { tool: names.tool(row.tool) }),
});

/** The newest readings of one joint; nothing where none is chosen, or the sheet has none such. */
export const jointReadings = async (
  db: Reader,
  { filter, spans }: Asked,
  names: Names,
): Promise<JointSection | undefined> => {
  const { procedure, revision, ask, fastener } = filter;
  if (procedure === undefined || ask === undefined) return undefined;
  const sheet =
    revision === undefined
      ? await newestSheet(db, procedure)
      : await sheetOf(db, procedure, revision);
  const joint =
    sheet && jointsOf(sheet).find((one) => one.ask === ask && one.fastener === fastener);
  const unit = sheet && jointUnit(sheet, ask);
  if (joint === undefined || unit === undefined) return undefined;
  // A step is named by its ask already; '' is how a value of no single fastener is stored.
  const asked = rowsAsked(
    'review_readings',
    { filter: { ...filter, fastener: fastener ?? '' }, spans },
    ['procedure', 'ask', 'fastener', 'bay', 'revision', 'role'],
  );
  const { rows } = await sql<ReadingRow>`
    select row.job, row.seq, row.at_ms, row.revision, row.value, row.lower, row.upper, row.target,
      row.verdict, row.tool ${asked} order by row.at_ms desc limit ${mostPoints}`.execute(db);
  return jointSection(joint, unit, rows.map((row) => toReading(row, names)).reverse());
};

/** How long the steps of one procedure took; nothing where none is chosen. */
export const stepTimes = async (
  db: Reader,
  { filter, spans }: Asked,
): Promise<StepTimesSection | undefined> => {
  const { procedure, revision, step: only } = filter;
  if (procedure === undefined) return undefined;
  const sheet =
    revision === undefined
      ? await newestSheet(db, procedure)
      : await sheetOf(db, procedure, revision);
  if (sheet === undefined) return undefined;
  const steps: StepTimesSection['steps'][number][] = [];
  for (const [at, { id, title, bookMinutes }] of sheet.steps.entries()) {
    if (only !== undefined && only !== id) continue;
    const asked = rowsAsked('review_steps', { filter: { ...filter, step: id }, spans }, [
      'procedure',
      'step',
      'bay',
      'revision',
      'role',
    ]);
    const { rows } = await sql<{ minutes: number }>`
      select row.minutes ${asked} order by row.at_ms desc limit ${mostRuns}`.execute(db);
    const step = { step: id, stepNumber: at + 1, stepTitle: title, bookMinutes };
    steps.push(
      stepTimesOf(
        step,
        rows.map(({ minutes }) => minutes),
      ),
    );
  }
  return { procedure, title: sheet.title, revision: sheet.revision, steps };
};

/** Sums of one phrase; null where nothing was heard of it. */
const sumsSchema = z.tuple([
  z.number().nullable(),
  z.number().nullable(),
  z.number().nullable(),
  z.number().nullable(),
  z.number().nullable(),
]);

/**
 * How each phrase fared, by whole half hours. The phrases that there are, are found by jumping from one to the next in
 * the index; then each is summed by itself, which is several times as fast as sorting all rows into groups.
 */
export const hearings = async (db: Reader, what: Asked): Promise<HearingSection> => {
  const asked = rowsAsked(
    'review_hearings',
    what,
    ['bay', 'procedure', 'revision', 'role'],
    'half_hour_ms',
  );
  const { rows } = await sql<{ phrase: string; sums: string }>`
    with recursive known (phrase) as (
      select min(phrase) from review_hearings
      union all
      select (select min(phrase) from review_hearings where phrase > known.phrase)
      from known where known.phrase is not null
    )
    select known.phrase, (
      select json_array(sum(row.heard), sum(row.asked_back), sum(row.declined),
        sum(row.taken_back), sum(row.said_again))
      ${asked} and row.phrase = known.phrase
    ) as sums from known where known.phrase is not null`.execute(db);
  return hearingSection(
    rows.flatMap(({ phrase, sums }) => {
      const [heard, askedBack, declined, takenBack, saidAgain] = parsed(sumsSchema, sums);
      return heard === null
        ? []
        : [
            {
              phrase,
              heard,
              askedBack: askedBack ?? 0,
              declined: declined ?? 0,
              takenBack: takenBack ?? 0,
              saidAgain: saidAgain ?? 0,
            },
          ];
    }),
  );
};

const common = ['bay', 'procedure', 'revision', 'role'] as const;
const withStep = [...common, 'step'] as const;
const withJoint = [...withStep, 'ask', 'fastener'] as const;

/** How much there is of everything. */
export const overview = async (db: Reader, what: Asked): Promise<OverviewSection> => {
  const count = async (table: string, columns: Parameters<typeof rowsAsked>[2]): Promise<number> =>
    (
      await sql<{ count: number }>`
        select count(*) as count ${rowsAsked(table, what, columns)}`.execute(db)
    ).rows[0]?.count ?? 0;
  const deviations = await sql<{ count: number; undecided: number | null; out: number | null }>`
    select count(*) as count, sum(row.decision is null) as undecided,
      sum(row.kind = 'outOfSpec') as out
    ${rowsAsked('review_deviations', what, withJoint)}`.execute(db);
  const state = await db.selectFrom('review_state').select('complete').executeTakeFirst();
  const [found] = deviations.rows;
  return {
    jobs: await count('review_jobs', common),
    deviations: found?.count ?? 0,
    undecided: found?.undecided ?? 0,
    outOfSpec: found?.out ?? 0,
    reworks: await count('review_reworks', withStep),
    holds: await count('review_holds', withStep),
    readings: await count('review_readings', withJoint),
    complete: state?.complete === 1,
  };
};
