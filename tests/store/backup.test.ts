import { spawn } from 'node:child_process';
import { once } from 'node:events';
import {
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import Libsql from 'libsql';
import { expect, test } from 'vitest';
import { clipShelf, jobLog, jobView } from '@/lib/store';
import { backUp, checkFolder, restore } from '@/lib/store/backup';
import { clipFolder, databaseFile } from '@/lib/store/files';
import { freshStore, opens, testFolder } from './fresh-store';
import { held, jobId, noon, opened, resumed } from './small-shop';

const sound = new Uint8Array(44);
sound.set(new TextEncoder().encode('RIFF'), 0);
sound.set(new TextEncoder().encode('WAVE'), 8);
const clip = { id: jobId(77), sound, person: 'ada', device: 'kiosk-1' };

/** A data folder with job 1 of three events and one sound, as its server leaves it open. */
const atWork = async () => {
  const fresh = await freshStore();
  await fresh.log.append(jobId(1), [opened(1), held(1, 2), resumed(1, 3)]);
  await clipShelf(fresh.store, clipFolder(fresh.folder)).keep(clip, noon);
  return fresh;
};

const asked = { replace: false, now: noon };

test('a backup is made beside a running server, checked, and only then there under its name', async () => {
  const { folder } = await atWork();
  const to = join(testFolder(), 'backups', 'monday');
  expect(await backUp(folder, to)).toMatchObject({
    ok: true,
    value: { jobs: 1, events: 3, clips: 1, faults: [] },
  });
  expect(readdirSync(to).sort()).toEqual(['baycall.db', 'clips']);
  expect(readdirSync(join(to, '..'))).toEqual(['monday']);
  expect(statSync(to).mode & 0o077).toBe(0);
});

test('a sound that was deleted after its days is not missing', async () => {
  const { folder, store } = await atWork();
  await clipShelf(store, clipFolder(folder)).deleteBefore(new Date(noon.getTime() + 1), noon);
  expect(await backUp(folder, join(testFolder(), 'tuesday'))).toMatchObject({
    ok: true,
    value: { clips: 0, faults: [] },
  });
});

test(
  'what is written while the backup is made does not make it inconsistent',
  { timeout: 60_000 },
  async () => {
    const { folder, file, store, log } = await freshStore();
    await log.append(jobId(1), [opened(1)]);
    await store.close();
    const writer = fileURLToPath(new URL('killed-writer.ts', import.meta.url));
    const child = spawn(process.execPath, ['--import', 'tsx', writer, file], {
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    const ended = once(child, 'exit');
    const acknowledged = { last: 0 };
    const lines = createInterface({ input: child.stdout });
    const enough = new Promise<void>((resolve) => {
      lines.on('line', (line) => {
        acknowledged.last = Number(line);
        if (acknowledged.last === 200) resolve();
      });
    });
    await enough;
    const to = join(testFolder(), 'backup');
    const before = acknowledged.last;
    const made = await backUp(folder, to);
    expect(child.exitCode).toBe(null);
    child.kill('SIGKILL');
    await ended;
    expect(made).toMatchObject({ ok: true, value: { jobs: 1, faults: [] } });
    if (!made.ok) throw new Error(made.error);
    expect(made.value.events).toBeGreaterThanOrEqual(before);
    expect(made.value.events).toBeLessThanOrEqual(acknowledged.last + 1);
  },
);

test('a backup is put back into an empty folder, and the job goes on from there', async () => {
  const { folder } = await atWork();
  const to = join(testFolder(), 'backup');
  await backUp(folder, to);
  const data = join(testFolder(), 'data');
  expect(await restore(to, data, asked)).toMatchObject({
    ok: true,
    value: { checked: { events: 3, clips: 1, faults: [] }, aside: undefined },
  });
  expect(readdirSync(data).sort()).toEqual(['baycall.db', 'clips']);
  const store = await opens(databaseFile(data));
  expect((await jobView(store, jobId(1)))?.events).toHaveLength(3);
  expect(await clipShelf(store, clipFolder(data)).read(clip.id)).toEqual(Buffer.from(sound));
  expect(await jobLog(store, () => noon).append(jobId(1), [held(1, 4)])).toMatchObject({
    ok: true,
  });
  await store.close();
});

test('a record that is there is not written over; with --force it is put aside, whole', async () => {
  const { folder, log } = await atWork();
  const backups = testFolder();
  const [older, newer] = [join(backups, 'older'), join(backups, 'newer')];
  await backUp(folder, older);
  await log.append(jobId(1), [held(1, 4)]);
  await backUp(folder, newer);
  const data = join(testFolder(), 'data');
  await restore(newer, data, asked);
  expect(await restore(older, data, asked)).toMatchObject({
    ok: false,
    error: expect.stringContaining('--force') as string,
  });
  const done = await restore(older, data, { ...asked, replace: true });
  expect(done).toMatchObject({ ok: true, value: { checked: { events: 3 } } });
  const old = await opens(done.ok ? (done.value.aside ?? '') : '');
  expect((await jobView(old, jobId(1)))?.events).toHaveLength(4);
  await old.close();
});

test('while the server is running nothing is put into its place', async () => {
  const { folder, store } = await atWork();
  const to = join(testFolder(), 'backup');
  await backUp(folder, to);
  expect(await restore(to, folder, { ...asked, replace: true })).toMatchObject({
    ok: false,
    error: expect.stringContaining('Stop it first') as string,
  });
  expect((await jobView(store, jobId(1)))?.events).toHaveLength(3);
});

test('a backup in which an event was altered is refused before anything is changed', async () => {
  const { folder } = await atWork();
  const to = join(testFolder(), 'backup');
  await backUp(folder, to);
  const raw = new Libsql(databaseFile(to));
  raw.exec('drop trigger job_events_no_update');
  raw.exec(`update job_events set event = replace(event, 'parts', 'party') where seq = 2`);
  raw.close();
  const data = join(testFolder(), 'data');
  expect(await restore(to, data, asked)).toEqual({
    ok: false,
    error:
      'This backup is not whole; nothing was changed. Take another one. ' +
      `Event 2 of job ${jobId(1)} is not what was stored: it or its place in the order was changed.`,
  });
  expect(existsSync(databaseFile(data))).toBe(false);
});

test('a backup that lacks a sound, or is cut short, is refused', async () => {
  const { folder } = await atWork();
  const to = join(testFolder(), 'backup');
  await backUp(folder, to);
  const data = join(testFolder(), 'data');
  rmSync(join(to, 'clips'), { recursive: true });
  expect(await restore(to, data, asked)).toMatchObject({
    ok: false,
    error: expect.stringContaining(`The sound of note ${clip.id} is missing.`) as string,
  });
  writeFileSync(databaseFile(to), 'torn');
  expect(await restore(to, data, asked)).toMatchObject({ ok: false });
  expect(existsSync(databaseFile(data))).toBe(false);
});

test('a record with a fault is not backed up as if it were whole', async () => {
  const { folder, store } = await atWork();
  await store.close();
  const raw = new Libsql(databaseFile(folder));
  raw.exec('drop trigger job_events_no_delete');
  raw.exec('delete from job_events where seq = 3');
  raw.close();
  const to = join(testFolder(), 'backup');
  const made = await backUp(folder, to);
  expect(made).toMatchObject({ ok: true });
  if (made.ok) expect(made.value.faults[0]).toBe(`Event 3 of job ${jobId(1)} is missing.`);
  expect(existsSync(to)).toBe(false);
});

test('a folder without a record, and a name that is taken, are refused in one line', async () => {
  const { folder } = await atWork();
  const nowhere = join(testFolder(), 'nowhere');
  expect(await backUp(nowhere, join(testFolder(), 'b'))).toMatchObject({ ok: false });
  expect(await checkFolder(nowhere, testFolder())).toMatchObject({ ok: false });
  const taken = join(testFolder(), 'taken');
  mkdirSync(taken);
  expect(await backUp(folder, taken)).toMatchObject({
    ok: false,
    error: expect.stringContaining('is there already') as string,
  });
});

test('a backup can be put back from a folder that cannot be written', async () => {
  const { folder } = await atWork();
  const to = join(testFolder(), 'backup');
  await backUp(folder, to);
  chmodSync(to, 0o500);
  const data = join(testFolder(), 'data');
  const done = await restore(to, data, asked);
  chmodSync(to, 0o700);
  expect(done).toMatchObject({ ok: true });
});
