import { expect, test } from 'vitest';
import { err, ok } from '@/lib/result';
import { recordPdfBy, type Press } from '@/lib/server/record-pdf';
import { jobId } from '../store/small-shop';
import { errorOf, Kiosk, openJobServer } from './kiosk';

const pdf = new TextEncoder().encode('%PDF-1.7');

/** A press whose prints end when the test says so. */
const slowPress = () => {
  const waiting: { readonly done: () => void; readonly fail: () => void }[] = [];
  const asked: string[] = [];
  const press: Press = {
    find: () => ok('/usr/bin/a-browser'),
    print: (_, address, format) =>
      new Promise((resolve, reject) => {
        asked.push(`${format} ${new URL(address).pathname}`);
        waiting.push({
          done: () => {
            resolve(pdf);
          },
          fail: () => {
            reject(new Error('the browser fell over'));
          },
        });
      }),
  };
  return { endpoint: recordPdfBy(press), waiting, asked };
};

type Endpoint = ReturnType<typeof recordPdfBy>;
const get = (kiosk: Kiosk, endpoint: Endpoint, query = '', job = jobId(1)) =>
  kiosk.send(endpoint, { job }, { method: 'GET', query });

test('two records are printed at once; a third is told to come again, and can once one is done', async () => {
  const { kiosk } = await openJobServer();
  const { endpoint, waiting, asked } = slowPress();
  const first = get(kiosk, endpoint);
  const second = get(kiosk, endpoint, '?paper=letter');
  await expect.poll(() => waiting.length).toBe(2);
  const third = errorOf(await get(kiosk, endpoint));
  expect(third).toMatchObject({ status: 503, code: 'unavailable' });
  expect(third.message).toBe('Other records are being printed. Try again in a moment.');
  expect(asked.sort()).toEqual([`A4 /jobs/${jobId(1)}/record`, `Letter /jobs/${jobId(1)}/record`]);
  waiting[0]?.done();
  waiting[1]?.done();
  for (const answer of await Promise.all([first, second])) {
    expect(answer.status).toBe(200);
    expect(answer.headers.get('content-type')).toBe('application/pdf');
    expect(answer.body).toBe('%PDF-1.7');
  }
  const fourth = get(kiosk, endpoint);
  await expect.poll(() => waiting.length).toBe(3);
  waiting[2]?.done();
  expect((await fourth).status).toBe(200);
});

test('a browser that falls over leaves its place to the next', async () => {
  const { kiosk } = await openJobServer();
  const { endpoint, waiting } = slowPress();
  for (const count of [1, 2, 3]) {
    const fallen = get(kiosk, endpoint);
    const said = expect(fallen).rejects.toThrow('the browser fell over');
    await expect.poll(() => waiting.length).toBe(count);
    waiting[count - 1]?.fail();
    await said;
  }
});

test('where there is no browser, no PDF is promised', async () => {
  const { kiosk } = await openJobServer();
  const endpoint = recordPdfBy({
    find: () => err('BAYCALL_CHROMIUM names x, which does not exist.'),
    print: () => Promise.resolve(pdf),
  });
  const said = errorOf(await get(kiosk, endpoint));
  expect(said).toMatchObject({ status: 503, code: 'unavailable' });
  expect(said.message).toContain('BAYCALL_CHROMIUM');
});

test('nobody prints who is not signed on, nor what there is not, nor on other paper', async () => {
  const { kiosk, server } = await openJobServer();
  const { endpoint, waiting } = slowPress();
  expect((await get(new Kiosk(server), endpoint)).status).toBe(401);
  expect(errorOf(await get(kiosk, endpoint, '', jobId(9)))).toMatchObject({ code: 'unknownJob' });
  expect(errorOf(await get(kiosk, endpoint, '?paper=a3'))).toMatchObject({ code: 'invalid' });
  expect(waiting).toEqual([]);
});
