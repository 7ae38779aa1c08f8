import { parse } from 'csv-parse/sync';
import { expect, test } from 'vitest';
import { demoProcedures } from '@/demo';
import { demoMonth } from '@/demo/month';
import { columns, exportText, rowsOf, type ExportKind, type Row } from '@/lib/export';
import { replay } from '@/lib/job';
import { unitSchema } from '@/lib/quantity';

const jobs = demoMonth({ seed: 'export', until: '2026-03-06', days: 4 }).map((events) => {
  const opening = events[0]?.happening;
  const revision = demoProcedures.find(
    ({ procedure }) => opening?.type === 'jobOpened' && procedure === opening.procedure,
  );
  const state = revision && replay(revision, events);
  if (state?.ok !== true) throw new Error('a job of the month does not replay');
  return { state: state.value, events };
});

const batches = async function* (kind: ExportKind): AsyncGenerator<readonly Row[]> {
  for (const { state, events } of jobs) yield await Promise.resolve(rowsOf(kind, state, events));
};

const whole = async (parts: AsyncIterable<string>): Promise<string> => {
  let text = '';
  for await (const part of parts) text += part;
  return text;
};

const csv = async (kind: ExportKind): Promise<readonly Record<string, string>[]> =>
  parse(await whole(exportText(kind, 'csv', batches(kind))), { columns: true });

test('has a row for each reading of each job, with value and unit as they were said', async () => {
  const rows = await csv('readings');
  const readings = jobs.flatMap(({ state }) => state.readings);
  expect(readings.length).toBeGreaterThan(50);
  expect(rows.map(({ value, unit }) => [Number(value), unit])).toEqual(
    readings.map(({ value, unit }) => [value, unit]),
  );
});

test('names units by their UCUM codes and times in UTC with offset', async () => {
  for (const row of await csv('readings')) {
    expect(unitSchema.safeParse(row.unit).success).toBe(true);
    expect(unitSchema.safeParse(row.canonical_unit).success).toBe(true);
    expect(row.at).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}\+00:00$/);
  }
});

test('gives every event whole, so that the job can be told from the table', async () => {
  const rows = await csv('events');
  const happenings = jobs.flatMap(({ events }) => events.map(({ happening }) => happening));
  expect(rows.map(({ happening }): unknown => JSON.parse(happening ?? ''))).toEqual(happenings);
});

test.each(['readings', 'deviations', 'events'] as const)(
  'says the same of %s as JSON and as CSV',
  async (kind) => {
    const json: unknown = JSON.parse(await whole(exportText(kind, 'json', batches(kind))));
    const rows = jobs.flatMap(({ state, events }) => rowsOf(kind, state, events));
    expect(json).toEqual(JSON.parse(JSON.stringify(rows)));
    expect(await csv(kind)).toHaveLength(rows.length);
    for (const row of rows)
      expect(Object.keys(row).filter((name) => !columns[kind].includes(name))).toEqual([]);
  },
);

test('is an empty array, or a header alone, where there is nothing', async () => {
  const nothing = async function* (): AsyncGenerator<readonly Row[]> {
    yield await Promise.resolve([]);
  };
  expect(await whole(exportText('readings', 'json', nothing()))).toBe('[]\n');
  expect((await whole(exportText('events', 'csv', nothing()))).split('\r\n')).toEqual([
    columns.events.join(','),
    '',
  ]);
});
