import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { readExport } from '@/lib/server/exports';
import { signForemanOn } from '@/lib/server/foreman-session';
import { held, jobId, opened, resumed } from '../store/small-shop';
import { errorOf, Kiosk, openJobServer } from './kiosk';

const asks = (screen: Kiosk, kind: string, query = '') =>
  screen.send(readExport, { kind }, { method: 'GET', query });

const foremanScreen = async () => {
  const { kiosk } = await openJobServer();
  await kiosk.append([kiosk.by(held(1, 2, '=1+1')), kiosk.by(resumed(1, 3))]);
  const screen = new Kiosk(kiosk.server);
  await screen.send(signForemanOn, undefined, { body: { person: 'finn', pin: '5678' } });
  return { kiosk, screen };
};

describe('an export', () => {
  test('gives every event of the shop as CSV, one a record, to a foreman', async () => {
    const { screen } = await foremanScreen();
    const { status, body, headers } = await asks(screen, 'events');
    expect(status).toBe(200);
    expect(headers.get('content-type')).toBe('text/csv; charset=utf-8; header=present');
    expect(headers.get('content-disposition')).toBe('attachment; filename="events.csv"');
    const rows: readonly Record<string, string>[] = parse(String(body), { columns: true });
    expect(rows.map(({ job, seq, type }) => [job, seq, type])).toEqual([
      [jobId(1), '1', 'jobOpened'],
      [jobId(1), '2', 'jobHeld'],
      [jobId(1), '3', 'jobResumed'],
    ]);
    expect(rows.map(({ at }) => at)).toEqual(
      Array<string>(3).fill('2025-03-01T12:00:00.000+00:00'),
    );
  });

  test('gives the same as JSON', async () => {
    const { screen } = await foremanScreen();
    const { body } = await asks(screen, 'events', '?format=json');
    expect(body).toMatchObject([{ seq: 1 }, { seq: 2 }, { seq: 3, type: 'jobResumed' }]);
  });

  test('is a head alone where nothing was read yet', async () => {
    const { screen } = await foremanScreen();
    const { body } = await asks(screen, 'readings');
    expect(String(body)).toMatch(/^job,seq,at,[a-z_,]+\r\n$/);
  });

  test('is for a foreman who is signed on, and says what there is', async () => {
    const { kiosk, screen } = await foremanScreen();
    expect(errorOf(await asks(kiosk, 'events'))).toMatchObject({ code: 'signOn' });
    expect(errorOf(await asks(new Kiosk(kiosk.server), 'events'))).toMatchObject({
      code: 'signOn',
    });
    expect(errorOf(await asks(screen, 'people'))).toMatchObject({ code: 'notFound' });
    expect(errorOf(await asks(screen, 'events', '?format=xls'))).toMatchObject({
      code: 'invalid',
    });
  });
});

test('an opened job is read once and in order, however many there are', async () => {
  const { kiosk, screen } = await foremanScreen();
  const other = new Kiosk(kiosk.server);
  await other.signOn('ada', '1234', 'bay-2');
  await other.append([other.by(opened(2, 'bay-2'))], {}, jobId(2));
  const { body } = await asks(screen, 'events', '?format=json');
  const seen = (body as readonly { readonly job: string; readonly seq: number }[]).map(
    ({ job, seq }) => `${job} ${seq}`,
  );
  expect(new Set(seen).size).toBe(4);
  expect(seen).toContain(`${jobId(2)} 1`);
});
