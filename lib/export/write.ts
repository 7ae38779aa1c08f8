import { csvRecord } from './csv';
import { columns, type ExportKind, type Row } from './tables';

export const exportFormats = ['csv', 'json'] as const;
export type ExportFormat = (typeof exportFormats)[number];

async function* csvText(kind: ExportKind, batches: AsyncIterable<readonly Row[]>) {
  const names = columns[kind];
  yield csvRecord(names);
  for await (const rows of batches)
    yield rows.map((row) => csvRecord(names.map((name) => row[name]))).join('');
}

/** One array with a row a line; a cell without a value is left out. */
async function* jsonText(batches: AsyncIterable<readonly Row[]>) {
  let before = '[\n';
  for await (const rows of batches)
    for (const row of rows) {
      yield `${before}${JSON.stringify(row)}`;
      before = ',\n';
    }
  yield before === '[\n' ? '[]\n' : '\n]\n';
}

/** The text of an export, a batch at a time: what was written can be forgotten before the next is read. */
export const exportText = (
  kind: ExportKind,
  format: ExportFormat,
  batches: AsyncIterable<readonly Row[]>,
): AsyncIterable<string> => (format === 'csv' ? csvText(kind, batches) : jsonText(batches));
