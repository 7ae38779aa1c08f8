import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { findModel } from '@/lib/hearing';

let root: string;
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'models-'));
});
afterEach(() => {
  rmSync(root, { recursive: true });
});

const folders = () => ({ models: join(root, 'speech'), packed: join(root, 'packed') });
const put = (path: string, content: string): void => {
  const full = join(root, 'speech', path);
  mkdirSync(dirname(full), { recursive: true });
  writeFileSync(full, content);
};
const fileFacts = (file: string, content: string) => ({
  file,
  bytes: Buffer.byteLength(content),
  sha256: createHash('sha256').update(content).digest('hex'),
});
const facts = (name: string) => ({ name, language: 'en-US', licence: 'none, made for this test' });
const putArchive = (name: string, content: string): void => {
  put(`${name}/model.tar.gz`, content);
  const archive = fileFacts('model.tar.gz', content);
  put(`${name}/manifest.json`, JSON.stringify({ ...facts(name), archive }));
};

describe('the model to listen with', () => {
  it('is our own when there is no other', async () => {
    putArchive('en-bay-3', 'ours');
    expect(await findModel(folders())).toMatchObject({ ok: true, value: { name: 'en-bay-3' } });
  });

  it('is one that was put there, even a smaller one', async () => {
    putArchive('en-bay-3', 'ours, and rather long');
    putArchive('theirs', 'short');
    expect(await findModel(folders())).toMatchObject({ ok: true, value: { name: 'theirs' } });
  });

  it('is the largest of several that were put there', async () => {
    putArchive('en-bay-3', 'ours');
    putArchive('a', 'small');
    putArchive('b', 'larger one');
    expect(await findModel(folders())).toMatchObject({ ok: true, value: { name: 'b', bytes: 10 } });
  });

  it('is missing when there is no folder at all', async () => {
    expect(await findModel(folders())).toMatchObject({
      ok: false,
      error: { problem: 'modelMissing' },
    });
  });

  it('is missing when the archive is not beside its manifest', async () => {
    putArchive('en-bay-3', 'ours');
    rmSync(join(root, 'speech/en-bay-3/model.tar.gz'));
    expect(await findModel(folders())).toMatchObject({
      ok: false,
      error: { problem: 'modelMissing' },
    });
  });

  it('is corrupt when it is shorter than its manifest says', async () => {
    putArchive('en-bay-3', 'ours');
    put('en-bay-3/model.tar.gz', 'our');
    const found = await findModel(folders());
    expect(found).toMatchObject({ ok: false, error: { problem: 'modelCorrupt' } });
    expect(found.ok ? '' : found.error.detail).toContain('3 bytes instead of 4');
  });

  it('is corrupt when one letter of it has changed', async () => {
    putArchive('en-bay-3', 'ours');
    put('en-bay-3/model.tar.gz', 'ouys');
    expect(await findModel(folders())).toMatchObject({
      ok: false,
      error: { problem: 'modelCorrupt' },
    });
  });

  it('is corrupt, and not passed over, when one that was put there has no manifest', async () => {
    putArchive('en-bay-3', 'ours');
    put('theirs/am/final.mdl', 'x');
    const found = await findModel(folders());
    expect(found.ok ? '' : found.error.detail).toContain('manifest.json is missing');
  });

  it('is not taken from outside its folder', async () => {
    const archive = { ...fileFacts('x', 'x'), file: '../x' };
    put('en-bay-3/manifest.json', JSON.stringify({ ...facts('en-bay-3'), archive }));
    expect(await findModel(folders())).toMatchObject({
      ok: false,
      error: { problem: 'modelCorrupt' },
    });
  });
});

describe('an unpacked model folder', () => {
  const putFolder = (): void => {
    const files = { 'am/final.mdl': 'network', 'conf/mfcc.conf': 'x'.repeat(700) };
    for (const [name, content] of Object.entries(files)) put(`theirs/big/${name}`, content);
    const folder = {
      root: 'big',
      files: Object.entries(files).map(([name, content]) => fileFacts(name, content)),
    };
    put('theirs/manifest.json', JSON.stringify({ ...facts('theirs'), folder }));
  };

  it('is packed into an archive with one top folder, as the system’s own tar reads it', async () => {
    putFolder();
    const found = await findModel(folders());
    if (!found.ok) throw new Error(found.error.detail);
    const list = execFileSync('tar', ['-tzf', found.value.path], { encoding: 'utf8' });
    expect(list.trim().split('\n')).toEqual(['model/am/final.mdl', 'model/conf/mfcc.conf']);
    const content = execFileSync('tar', ['-xzOf', found.value.path, 'model/conf/mfcc.conf']);
    expect(content.toString()).toBe('x'.repeat(700));
  });

  it('gives the same archive each time, so that browsers need not fetch it again', async () => {
    putFolder();
    const first = await findModel(folders());
    const second = await findModel(folders());
    expect(first.ok && second.ok && first.value.sha256 === second.value.sha256).toBe(true);
  });

  it('is corrupt when one of its files has changed', async () => {
    putFolder();
    put('theirs/big/am/final.mdl', 'netwark');
    expect(await findModel(folders())).toMatchObject({
      ok: false,
      error: { problem: 'modelCorrupt' },
    });
  });
});
