import { sql } from 'kysely';
import { describe, expect, test } from 'vitest';
import { signForemanOn } from '@/lib/server/foreman-session';
import { readMoment, timelinePage } from '@/lib/server/job-timeline';
import { held, jobId, resumed } from '../store/small-shop';
import { errorOf, Kiosk, openJobServer } from './kiosk';

const all = { filter: { kinds: [] }, at: undefined } as const;

/** A job of three events, whose foreman is Finn. */
const threeEvents = async () => {
  const opened = await openJobServer();
  const { kiosk, server } = opened;
  await kiosk.append([kiosk.by(held(1, 2)), kiosk.by(resumed(1, 3))]);
  const screen = new Kiosk(server);
  await screen.send(signForemanOn, undefined, { body: { person: 'finn', pin: '5678' } });
  const page = async (
    cookies: string | null = null,
    how: Parameters<typeof timelinePage>[3] = all,
  ) => {
    const found = await timelinePage(server, cookies, jobId(1), how);
    if (found === 'unknownJob' || 'broken' in found) throw new Error('no page');
    return found;
  };
  return { ...opened, screen, page };
};

/** What somebody does who has the file. */
const past = async (server: Awaited<ReturnType<typeof openJobServer>>['server'], what: string) => {
  for (const on of ['no_update', 'no_delete', 'no_replace'])
    await sql.raw(`drop trigger job_events_${on}`).execute(server.store.db);
  await sql.raw(what).execute(server.store.db);
};

const moment = (kiosk: Kiosk, at: string, job = jobId(1)) =>
  kiosk.send(readMoment, { job }, { method: 'GET', query: `?at=${at}` });

describe('a moment of a job', () => {
  test('numbers people for anybody, and names them for a foreman at their own screen', async () => {
    const { kiosk, server, screen } = await threeEvents();
    const stranger = await moment(new Kiosk(server), '2');
    expect(stranger).toMatchObject({
      status: 200,
      body: { row: { who: 'Mechanic 1', what: 'Put on hold' }, moment: { phase: 'held' } },
    });
    expect(JSON.stringify(stranger.body)).not.toMatch(/ada/i);
    expect((await moment(kiosk, '2')).body).toMatchObject({ row: { who: 'Mechanic 1' } });
    expect((await moment(screen, '2')).body).toMatchObject({ row: { who: 'Ada' } });
  });

  test('is that of the events up to then, also once more were stored', async () => {
    const { kiosk, server } = await threeEvents();
    expect((await moment(kiosk, '1')).body).toMatchObject({ moment: { seq: 1, phase: 'running' } });
    expect(errorOf(await moment(kiosk, '4'))).toMatchObject({ status: 404, code: 'notFound' });
    await kiosk.append([kiosk.by(held(1, 4))]);
    expect((await moment(new Kiosk(server), '4')).body).toMatchObject({
      moment: { phase: 'held' },
    });
  });

  test.each(['0', '-1', '1.5', 'x', ''])('"%s" is none', async (at) => {
    const { kiosk } = await threeEvents();
    expect(errorOf(await moment(kiosk, at))).toMatchObject({ status: 400, code: 'invalid' });
  });

  test('of no job is not found', async () => {
    const { kiosk } = await threeEvents();
    expect(errorOf(await moment(kiosk, '1', jobId(9)))).toMatchObject({ code: 'unknownJob' });
  });
});

describe('the page of a job', () => {
  test('opens at the end, or at the moment that is asked for', async () => {
    const { page } = await threeEvents();
    expect(await page()).toMatchObject({ at: 3, of: 3, stored: 3, stoppedAt: undefined });
    expect(await page(null, { ...all, at: 2 })).toMatchObject({
      at: 2,
      shown: { moment: { hold: 'parts' } },
    });
    expect(await page(null, { ...all, at: 77 })).toMatchObject({ at: 3 });
  });

  test('says that the record is unbroken, with its head, and holds no id of a person', async () => {
    const { page } = await threeEvents();
    const { chain, ...rest } = await page();
    expect(chain.broken).toBeUndefined();
    expect(chain.head).toMatch(/^[0-9a-f]{64}$/);
    expect(JSON.stringify(rest)).not.toMatch(/ada/i);
  });

  test('names the event that was altered, though it was looked at before', async () => {
    const { page, server } = await threeEvents();
    await page();
    await past(
      server,
      `update job_events set event = replace(event, '"parts"', '"party"') where seq = 2`,
    );
    const altered = await page();
    expect(altered.chain.broken).toContain('Event 2 of job');
    expect(altered.rows[1]).toMatchObject({ reason: 'party' });
  });

  test('shows what can be shown where an event is missing or cannot be read', async () => {
    const { page, server } = await threeEvents();
    await past(server, `update job_events set event = '{}' where seq = 3`);
    expect(await page()).toMatchObject({ of: 2, stored: 3, stoppedAt: 3 });
    await sql.raw(`delete from job_events where seq = 2`).execute(server.store.db);
    const gone = await page();
    expect(gone.chain.broken).toContain('Event 2 of job');
    expect(gone).toMatchObject({ of: 1, stored: 2, stoppedAt: 2 });
  });

  test('says so where not even the opening can be read', async () => {
    const { server } = await threeEvents();
    await past(server, `update job_events set event = 'x' where seq = 1`);
    expect(await timelinePage(server, null, jobId(1), all)).toMatchObject({
      broken: expect.stringContaining('Event 1 of job') as string,
    });
    expect(await timelinePage(server, null, jobId(9), all)).toBe('unknownJob');
  });
});
