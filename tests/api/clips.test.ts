import { existsSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { deleteOldClips } from '@/lib/server/clip-keeping';
import { keepClip, readClip } from '@/lib/server/clips';
import { signForemanOn } from '@/lib/server/foreman-session';
import { changeSettings } from '@/lib/store/shop-records';
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

const read = (kiosk: Kiosk) => kiosk.send(readClip, { clip }, { method: 'GET' });

test('a sound is heard by a foreman at a screen of their own, and at the kiosk at which it was spoken alone', async () => {
  const { kiosk, server } = await openJobServer();
  await put(kiosk, wave(100));
  const screen = new Kiosk(server);
  await screen.send(signForemanOn, undefined, { body: { person: 'finn', pin: '5678' } });
  expect((await read(screen)).status).toBe(200);
  expect((await read(kiosk)).status).toBe(200);
  const other = new Kiosk(server);
  await other.signOn('ada', '1234', 'bay-2');
  expect(errorOf(await read(other))).toMatchObject({ status: 403, code: 'notForeman' });
});

const day = 86_400_000;
const files = (folder: string) => readdirSync(join(folder, 'clips'));

test('a sound is deleted once it is older than thirty days; that it was there, and when it went, is kept', async () => {
  const { kiosk, server, clock, folder } = await openJobServer();
  await put(kiosk, wave(100));
  const storedAt = new Date(clock.ms).toISOString();
  clock.ms += 30 * day;
  expect(await deleteOldClips(server)).toBe(0);
  expect(files(folder)).toHaveLength(1);
  clock.ms += 1;
  expect(await deleteOldClips(server)).toBe(1);
  expect(files(folder)).toEqual([]);
  const deletedAt = new Date(clock.ms).toISOString();
  expect(await server.clips.find(clip)).toMatchObject({ storedAt, deletedAt });
  expect([...(await server.clips.deletedOf([clip, 'another']))]).toEqual([[clip, deletedAt]]);
  // Sessions do not live so long.
  await kiosk.signOn('ada', '1234');
  const gone = errorOf(await read(kiosk));
  expect(gone).toMatchObject({ status: 404, code: 'notFound' });
  expect(gone.message).toContain(deletedAt);
  clock.ms += day;
  expect(await deleteOldClips(server)).toBe(0);
  expect(await server.clips.find(clip)).toMatchObject({ deletedAt });
});

test('a sound whose file is gone already is told to be deleted all the same', async () => {
  const { kiosk, server, clock, folder } = await openJobServer();
  await put(kiosk, wave(100));
  rmSync(join(folder, 'clips', files(folder)[0] ?? ''));
  clock.ms += 31 * day;
  expect(await deleteOldClips(server)).toBe(1);
});

test('a shop says how many days, and with none keeps no sound', async () => {
  const { kiosk, server, clock, folder } = await openJobServer();
  await changeSettings(server.store, { noteSoundDays: 2 });
  await put(kiosk, wave(100));
  clock.ms += 2 * day + 1;
  expect(await deleteOldClips(server)).toBe(1);
  await kiosk.signOn('ada', '1234');
  await changeSettings(server.store, { noteSoundDays: 0 });
  rmSync(join(folder, 'clips'), { recursive: true });
  const other = '5f0c2c5e-2f0e-4a4c-9d5b-0f9a1f7a6c12';
  expect(errorOf(await put(kiosk, wave(100), other))).toMatchObject({
    status: 409,
    code: 'notKept',
  });
  expect(existsSync(join(folder, 'clips'))).toBe(false);
});
