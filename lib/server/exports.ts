import {
  exportFormats,
  exportKinds,
  exportText,
  rowsOf,
  type ExportKind,
  type Row,
} from '../export';
import { jobView, stateOf, type Store } from '../store';
import { jobIds } from '../store/job-records';
import { problem, stream } from './problem';
import type { Endpoint } from './route';
import { foremanIn } from './signed-on';

export interface ExportParams {
  readonly kind: string;
}

const types = { csv: 'text/csv; charset=utf-8; header=present', json: 'application/json' } as const;

/** The rows of one job after another: no more than one job is held in memory. */
async function* rowsOfShop(store: Store, kind: ExportKind): AsyncGenerator<readonly Row[]> {
  for (const id of await jobIds(store.db)) {
    const record = await jobView(store, id);
    if (record === undefined) continue;
    yield rowsOf(kind, stateOf(record), record.events);
  }
}

/** Text as it is asked for; whoever stops reading stops the making. */
const streamOf = (texts: AsyncIterable<string>): ReadableStream<Uint8Array> => {
  const iterator = texts[Symbol.asyncIterator]();
  const encoder = new TextEncoder();
  return new ReadableStream({
    async pull(controller) {
      const next = await iterator.next();
      if (next.done === true) controller.close();
      else controller.enqueue(encoder.encode(next.value));
    },
    async cancel() {
      await iterator.return?.();
    },
  });
};

/**
 * GET /api/export/KIND?format=csv|json: all readings, deviations or events of the shop, for a foreman who is signed on
 * at a screen of their own. CSV by RFC 4180, times in UTC with offset, units as UCUM codes.
 */
export const readExport: Endpoint<ExportParams> = async (server, request, params) => {
  if ((await foremanIn(server, request.headers.get('cookie'))) === undefined)
    return problem('signOn', 'Exports are for the foreman: sign on at /foreman first.');
  const kind = exportKinds.find((one) => one === params.kind);
  if (kind === undefined)
    return problem('notFound', `There is no such export; there are ${exportKinds.join(', ')}.`);
  const wanted = new URL(request.url).searchParams.get('format') ?? 'csv';
  const format = exportFormats.find((one) => one === wanted);
  if (format === undefined)
    return problem('invalid', `The format is ${exportFormats.join(' or ')}.`);
  const text = exportText(kind, format, rowsOfShop(server.store, kind));
  const response = stream(streamOf(text), types[format]);
  response.headers.set('content-disposition', `attachment; filename="${kind}.${format}"`);
  return response;
};
