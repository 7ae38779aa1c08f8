import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { beforeEach, expect, onTestFinished, test } from 'vitest';
import { shellAnswer, shellEntries } from '@/lib/shell';

let root = '';

const write = async (path: string, text: string): Promise<void> => {
  await mkdir(dirname(join(root, path)), { recursive: true });
  await writeFile(join(root, path), text);
};

beforeEach(async () => {
  const folder = await mkdtemp(join(tmpdir(), 'baycall-shell-'));
  root = folder;
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  await write('.next/static/chunks/a1.js', 'a');
  await write('.next/static/chunks/a1.js.map', 'map');
  await write('.next/static/media/letters.woff2', 'w');
  for (const name of [
    'worker.js',
    'sounds.js',
    'worklet.js',
    'audio/audio_wasm_internal.js',
    'audio/audio_wasm_internal.wasm',
  ])
    await write(`.build/hearing/${name}`, name);
  await write('.build/shell/kiosk-worker.js', 'begin();');
});

const revisions = async () =>
  Object.fromEntries((await shellEntries(root)).map(({ url, revision }) => [url, revision]));

test('what a kiosk keeps is the built page’s files and what the ears are made of', async () => {
  expect(Object.keys(await revisions())).toEqual([
    '/_next/static/chunks/a1.js',
    '/_next/static/media/letters.woff2',
    '/hearing/worker.js',
    '/hearing/sounds.js',
    '/hearing/worklet.js',
    '/hearing/audio/audio_wasm_internal.js',
    '/hearing/audio/audio_wasm_internal.wasm',
  ]);
});

test('a file whose address stays gets another revision with other content', async () => {
  const before = await revisions();
  await write('.build/hearing/worker.js', 'another');
  const after = await revisions();
  expect(after['/hearing/worker.js']).not.toBe(before['/hearing/worker.js']);
  expect(after['/hearing/worklet.js']).toBe(before['/hearing/worklet.js']);
  expect(after['/_next/static/chunks/a1.js']).toBeNull();
});

test('the worker is served as a script that no cache keeps, with its list in front', async () => {
  const response = await shellAnswer(root);
  expect(response.headers.get('content-type')).toBe('text/javascript; charset=utf-8');
  expect(response.headers.get('cache-control')).toBe('no-cache');
  expect(await response.text()).toMatch(
    /^self\.kioskShell=\[\{"url":"\/_next\/static\/.*\];\nbegin\(\);$/,
  );
});
