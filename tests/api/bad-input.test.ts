import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readBayView } from '@/lib/server/bays';
import { jsonFault } from '@/lib/server/json-fault';
import { appendEvents, readJobEvents } from '@/lib/server/jobs';
import { held, jobId, resumed } from '../store/small-shop';
import { errorOf, openJobServer, type Kiosk, type Sent } from './kiosk';

/** An event of the right form but for one member. */
const broken = (kiosk: Kiosk, change: object) => ({ ...kiosk.by(held(1, 2)), ...change });

test.each([
  ['no member events', () => ({})],
  ['an empty batch', () => ({ events: [] })],
  ['201 events', (kiosk: Kiosk) => ({ events: Array(201).fill(kiosk.by(held(1, 2))) })],
  ['a member too many', (kiosk: Kiosk) => ({ events: [kiosk.by(held(1, 2))], all: true })],
  ['another format', (kiosk: Kiosk) => ({ events: [broken(kiosk, { format: 2 })] })],
  ['an id that is no UUID', (kiosk: Kiosk) => ({ events: [broken(kiosk, { id: '1' })] })],
  ['number 0', (kiosk: Kiosk) => ({ events: [broken(kiosk, { seq: 0 })] })],
  ['number 1.5', (kiosk: Kiosk) => ({ events: [broken(kiosk, { seq: 1.5 })] })],
  [
    'a time without offset',
    (kiosk: Kiosk) => ({
      events: [broken(kiosk, { at: '2025-03-01T12:00:00' })],
    }),
  ],
  ['an unknown role', (kiosk: Kiosk) => ({ events: [broken(kiosk, { role: 'king' })] })],
  [
    'an unknown happening',
    (kiosk: Kiosk) => ({
      events: [broken(kiosk, { happening: { type: 'jobDeleted' } })],
    }),
  ],
  [
    'a reason without words',
    (kiosk: Kiosk) => ({
      events: [broken(kiosk, { happening: { type: 'jobHeld', reason: { text: '  ' } } })],
    }),
  ],
  [
    'a reason of 2001 characters',
    (kiosk: Kiosk) => ({
      events: [
        broken(kiosk, { happening: { type: 'jobHeld', reason: { text: 'x'.repeat(2001) } } }),
      ],
    }),
  ],
  [
    'an event of another job than the address',
    (kiosk: Kiosk) => ({
      events: [broken(kiosk, { job: jobId(2) })],
    }),
  ],
])('%s is refused with the place of the fault, and nothing is stored', async (_, body) => {
  const { kiosk } = await openJobServer();
  const answer = await kiosk.send(appendEvents, { job: jobId(1) }, { body: body(kiosk) });
  expect(errorOf(answer)).toMatchObject({ status: 400, code: 'invalid' });
  expect(await kiosk.storedTypes()).toEqual(['jobOpened']);
});

const deep = `${'['.repeat(50_000)}${']'.repeat(50_000)}`;
const json = (text: string): Sent => ({ raw: text });

test.each<[string, number, string, Sent]>([
  ['no content', 400, 'malformed', json('')],
  ['half a JSON text', 400, 'malformed', json('{"events": [')],
  ['text that is not UTF-8', 400, 'malformed', { raw: new Uint8Array([0x22, 0xff, 0x22]) }],
  ['endless nesting', 400, 'malformed', json(`{"events": ${deep}}`)],
  ['__proto__', 400, 'malformed', json('{"events": [], "__proto__": {"role": "foreman"}}')],
  ['constructor', 400, 'malformed', json('{"events": [{"constructor": {"prototype": {}}}]}')],
  ['a hidden __proto__', 400, 'malformed', json('{"events": [{"\\u005f_proto__": 1}]}')],
  ['a NUL character', 400, 'malformed', json('{"events": "\\u0000"}')],
  ['half a surrogate pair', 400, 'malformed', json('{"events": "\\ud800"}')],
  ['one byte too much', 413, 'tooLarge', json(`"${'x'.repeat(999_999)}"`)],
  [
    'a form',
    415,
    'contentType',
    { headers: { 'content-type': 'application/x-www-form-urlencoded' } },
  ],
  ['plain text', 415, 'contentType', { headers: { 'content-type': 'text/plain' } }],
  ['no content type', 415, 'contentType', { headers: { 'content-type': undefined } }],
  ['another site', 403, 'crossSite', { headers: { origin: 'http://evil.test' } }],
  ['another port', 403, 'crossSite', { headers: { origin: 'http://kiosk.test:1' } }],
  ['an origin that is none', 403, 'crossSite', { headers: { origin: 'null' } }],
  ['no origin', 403, 'crossSite', { headers: { origin: undefined } }],
  [
    'a neighbour site',
    403,
    'crossSite',
    { headers: { origin: undefined, 'sec-fetch-site': 'same-site' } },
  ],
  [
    'our origin but a fetch across sites',
    403,
    'crossSite',
    { headers: { 'sec-fetch-site': 'cross-site' } },
  ],
])('%s is refused with %i %s, and nothing is stored', async (_, status, code, sent) => {
  const { kiosk } = await openJobServer();
  const answer = await kiosk.append([kiosk.by(held(1, 2))], sent);
  expect(errorOf(answer)).toMatchObject({ status, code });
  expect(await kiosk.storedTypes()).toEqual(['jobOpened']);
  expect((await kiosk.append([kiosk.by(held(1, 2))])).status).toBe(200);
});

test('a content type with a character set is taken, and so is a fetch that says it is ours', async () => {
  const { kiosk } = await openJobServer();
  const headers = { 'content-type': 'Application/JSON; charset=utf-8' };
  expect((await kiosk.append([kiosk.by(held(1, 2))], { headers })).status).toBe(200);
  const fetched = { origin: undefined, 'sec-fetch-site': 'same-origin' };
  const more = await kiosk.append([kiosk.by(resumed(1, 3))], { headers: fetched });
  expect(more.status).toBe(200);
});

test('an endless body is read no further than the limit', async () => {
  const { kiosk } = await openJobServer();
  let given = 0;
  let cancelled = false;
  const endless = new ReadableStream<Uint8Array>({
    pull(controller) {
      given += 100_000;
      controller.enqueue(new Uint8Array(100_000).fill(0x20));
    },
    cancel() {
      cancelled = true;
    },
  });
  const answer = await kiosk.append([], { raw: endless });
  expect(errorOf(answer)).toMatchObject({ status: 413, code: 'tooLarge' });
  expect(answer.headers.get('connection')).toBe('close');
  expect(given).toBeLessThanOrEqual(1_300_000);
  expect(cancelled).toBe(true);
});

test('a body that breaks off is refused', async () => {
  const { kiosk } = await openJobServer();
  const torn = new ReadableStream<Uint8Array>({
    start(controller) {
      controller.enqueue(new TextEncoder().encode('{"events": ['));
      controller.error(new Error('connection lost'));
    },
  });
  expect(errorOf(await kiosk.append([], { raw: torn }))).toMatchObject({
    status: 400,
    code: 'malformed',
  });
});

test.each(['nothing', '__proto__', '../../etc/passwd', "bay-1' or 1=1", '\0', ''])(
  'a bay called %j is not found',
  async (bay) => {
    const { kiosk } = await openJobServer();
    const answer = await kiosk.send(readBayView, { bay }, { method: 'GET' });
    expect(errorOf(answer)).toMatchObject({ status: 404, code: 'unknownBay' });
  },
);

test.each(['nothing', jobId(9), '__proto__', "' or 1=1", '\0', ''])(
  'a job called %j is not found',
  async (job) => {
    const { kiosk } = await openJobServer();
    const answer = await kiosk.send(readJobEvents, { job }, { method: 'GET' });
    expect(errorOf(answer)).toMatchObject({ status: 404, code: 'unknownJob' });
  },
);

test('events for a job that was never opened are refused', async () => {
  const { kiosk } = await openJobServer();
  const answer = await kiosk.append([kiosk.by(held(2, 2))], {}, jobId(2));
  expect(errorOf(answer)).toMatchObject({ status: 404, code: 'unknownJob' });
});

test('whatever JSON is sent, it is refused and changes nothing', { timeout: 60_000 }, async () => {
  const { kiosk } = await openJobServer();
  const near = fc.record(
    {
      ...Object.fromEntries(
        Object.entries(held(1, 2)).map(([name, value]) => [
          name,
          fc.oneof(fc.constant(value as unknown), fc.jsonValue()),
        ]),
      ),
    },
    { requiredKeys: [] },
  );
  const bodies = fc.oneof(fc.jsonValue(), fc.record({ events: fc.array(near, { maxLength: 3 }) }));
  await fc.assert(
    fc.asyncProperty(bodies, async (body) => {
      const { status } = await kiosk.send(appendEvents, { job: jobId(1) }, { body });
      // The kiosk's own name is never guessed, so even an event of the right form is not this kiosk's.
      expect([400, 403]).toContain(status);
    }),
    { numRuns: 300 },
  );
  expect(await kiosk.storedTypes()).toEqual(['jobOpened']);
});

test('plain JSON has no fault', () => {
  expect(jsonFault({ a: [1, 'two', null, true, { b: 'ü 😀' }] })).toBeUndefined();
});
