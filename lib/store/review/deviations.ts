import { sql } from 'kysely';
import { z } from 'zod';
import { deviationKindSchema } from '../../job';
import { fastenerName, fastenerOf, partOf, stepOf } from '../../procedure';
import { pareto, type ParetoBar } from '../../statistics';
import {
  decidedSchema,
  deviationFactsSchema,
  knownLimits,
  mostRows,
  transcriptOf,
  whyOf,
  type DeviationList,
  type DeviationRow,
  type MeasuredBeside,
  type ParetoSection,
} from '../../review';
import type { Reader } from '../reader';
import { parsed, type Names, type PlaceRow } from './names';
import { rowsAsked, type Asked } from './narrow';
import { sheetOf } from './sheets';

const columns = ['bay', 'procedure', 'revision', 'step', 'ask', 'fastener', 'role'] as const;
const asked = (what: Asked) => rowsAsked('review_deviations', what, columns);

interface Row extends PlaceRow {
  readonly id: string;
  readonly kind: string;
  readonly fastener: string | null;
  readonly actor: string;
  readonly role: string;
  readonly facts: string;
  readonly decision: string | null;
  readonly decided: string | null;
}

const wordSchema = z.enum(['accepted', 'acceptedRecheckDue', 'rework']);

const decisionOf = ({ decision, decided }: Row, names: Names): DeviationRow['decision'] => {
  if (decision === null || decided === null) return undefined;
  const { by, why } = parsed(decidedSchema, decided);
  return { word: wordSchema.parse(decision), by: names.who(by, 'foreman'), why: whyOf(why) };
};

const besides = (
  measured: NonNullable<z.infer<typeof deviationFactsSchema>['measured']>,
): MeasuredBeside => {
  const { value, unit, verdict, heard } = measured;
  const transcript = heard === undefined ? undefined : transcriptOf(heard);
  return {
    value,
    unit,
    verdict,
    ...knownLimits(measured),
    ...(transcript === undefined ? {} : { transcript }),
  };
};

const toRow = async (db: Reader, row: Row, names: Names): Promise<DeviationRow> => {
  const place = await names.place(row);
  const sheet = await sheetOf(db, row.procedure, row.revision);
  const { part, tool, measured, why } = parsed(deviationFactsSchema, row.facts);
  const fastener = sheet && row.fastener !== null ? fastenerOf(sheet, row.fastener) : undefined;
  const decision = decisionOf(row, names);
  return {
    ...place,
    id: row.id,
    kind: deviationKindSchema.parse(row.kind),
    instruction: (sheet && stepOf(sheet, row.step)?.instruction) ?? '',
    ...(part === undefined ? {} : { part: (sheet && partOf(sheet, part)?.name) ?? part }),
    ...(row.fastener === null
      ? {}
      : {
          fastener:
            fastener === undefined ? row.fastener : fastenerName(fastener.group, fastener.fastener),
        }),
    ...(measured === undefined ? {} : { measured: besides(measured) }),
    ...(tool === undefined ? {} : { tool: names.tool(tool) }),
    by: names.who(row.actor, row.role),
    ...(why === undefined ? {} : { why: whyOf(why) }),
    ...(decision === undefined ? {} : { decision }),
  };
};

/** Counts all, reads the newest. */
export const deviationList = async (
  db: Reader,
  what: Asked,
  names: Names,
): Promise<DeviationList> => {
  const counted = await sql<{ total: number; undecided: number | null }>`
    select count(*) as total, sum(row.decision is null) as undecided ${asked(what)}`.execute(db);
  const { rows } = await sql<Row>`
    select * from review_deviations where rowid in
      (select row.rowid ${asked(what)} order by row.at_ms desc limit ${mostRows})
    order by at_ms desc, seq desc`.execute(db);
  return {
    total: counted.rows[0]?.total ?? 0,
    undecided: counted.rows[0]?.undecided ?? 0,
    rows: await Promise.all(rows.map((row) => toRow(db, row, names))),
  };
};

const barsOf = (counts: readonly (readonly [string, number])[]): readonly ParetoBar[] => {
  const bars = pareto(counts);
  return bars.ok ? bars.value : [];
};

/** By kind and by step. */
export const deviationPareto = async (
  db: Reader,
  what: Asked,
  names: Names,
): Promise<ParetoSection> => {
  const { rows } = await sql<{ kind: string; procedure: string; step: string; count: number }>`
    select row.kind, row.procedure, row.step, count(*) as count ${asked(what)}
    group by row.kind, row.procedure, row.step`.execute(db);
  const byKind = barsOf(rows.map(({ kind, count }) => [kind, count]));
  // Ids have no spaces.
  const bySteps = barsOf(rows.map(({ procedure, step, count }) => [`${procedure} ${step}`, count]));
  return {
    total: rows.reduce((sum, { count }) => sum + count, 0),
    byKind: byKind.map(({ name, ...bar }) => ({ ...bar, kind: deviationKindSchema.parse(name) })),
    byStep: await Promise.all(
      bySteps.map(async ({ name, ...bar }) => {
        const [procedure = '', step = ''] = name.split(' ');
        return { ...bar, ...(await names.step(procedure, step)) };
      }),
    ),
  };
};
