import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { keepClip, readClip } from '@/lib/server/clips';
import { errorOf, freshServer, Kiosk, openJobServer, type Sent } from './kiosk';

const clip = '5f0c2c5e-2f0e-4a4c-9d5b-0f9a1f7a6c11';

/** A WAVE file of silence, 16 kHz, 16 bits, one channel. */
const wave = (samples: number, first = 0): Uint8Array<ArrayBuffer> => {
  const sound = new Uint8Array(44 + 2 * samples);
  const view = new DataView(sound.buffer);
  for (const [at, text] of [
    [0, 'RIFF'],
    [8, 'WAVE'],
    [12, 'fmt '],
    [36, 'data'],
  ] as const) {
    sound.set(new TextEncoder().encode(text), at);
  }
  view.setUint32(4, 36 + 2 * samples, true);
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, 16_000, true);
  view.setUint32(28, 32_000, true);
  view.setUint16(32, 2, true);
  view.setUint16(34, 16, true);
  view.setUint32(40, 2 * samples, true);
  view.setInt16(44, first, true);
  return sound;
};

const put = (kiosk: Kiosk, raw: Sent['raw'], id = clip, type: string | undefined = 'audio/wav') =>
  kiosk.send(keepClip, { clip: id }, { method: 'PUT', raw, headers: { 'content-type': type } });

test('a sound is kept as it came and given back to somebody who is signed on', async () => {
  const { kiosk, server, folder } = await openJobServer();
  expect((await put(kiosk, wave(100))).status).toBe(201);
  const files = readdirSync(join(folder, 'clips'));
  expect(files).toHaveLength(1);
  expect(new Uint8Array(readFileSync(join(folder, 'clips', files[0] ?? '')))).toEqual(wave(100));
  const read = await kiosk.send(readClip, { clip }, { method: 'GET' });
  expect(read.status).toBe(200);
  expect(read.headers.get('content-type')).toBe('audio/wav');
  expect(read.headers.get('x-content-type-options')).toBe('nosniff');
  const stranger = new Kiosk(server);
  expect((await stranger.send(readClip, { clip }, { method: 'GET' })).status).toBe(401);
});

test('the same sound again changes nothing, another under the same id is refused', async () => {
  const { kiosk } = await openJobServer();
  await put(kiosk, wave(100));
  expect((await put(kiosk, wave(100))).status).toBe(200);
  expect(errorOf(await put(kiosk, wave(100, 7)))).toMatchObject({ status: 409, code: 'idReused' });
});

test('two sounds under one id at the same moment: one is kept whole, the other refused', async () => {
  const { kiosk } = await openJobServer();
  const answers = await Promise.all([put(kiosk, wave(50_000)), put(kiosk, wave(50_000, 7))]);
  expect(answers.map(({ status }) => status).sort()).toEqual([201, 409]);
});

test.each<[string, number, string, Sent['raw'], string?, string?]>([
  ['what is no WAVE file', 400, 'invalid', new TextEncoder().encode('<script>'.repeat(20))],
  ['a header without its end', 400, 'invalid', wave(100).subarray(0, 43)],
  ['nothing', 400, 'invalid', new Uint8Array()],
  ['an id that is no UUID', 400, 'invalid', wave(100), '../../baycall.db'],
  ['another type', 415, 'contentType', wave(100), clip, 'text/html'],
  ['more than two megabytes', 413, 'tooLarge', wave(1_000_000)],
])('%s is refused with %i %s', async (_, status, code, raw, id, type) => {
  const { kiosk, server } = await openJobServer();
  expect(errorOf(await put(kiosk, raw, id, type))).toMatchObject({ status, code });
  expect(await server.store.db.selectFrom('clips').selectAll().execute()).toEqual([]);
});

test('without signing on no sound is kept', async () => {
  const { kiosk } = await freshServer();
  expect(errorOf(await put(kiosk, wave(100)))).toMatchObject({ status: 401, code: 'signOn' });
});

test('an unknown clip is not found', async () => {
  const { kiosk } = await openJobServer();
  expect((await kiosk.send(readClip, { clip: 'x' }, { method: 'GET' })).status).toBe(404);
  expect((await kiosk.send(readClip, { clip }, { method: 'GET' })).status).toBe(404);
});
