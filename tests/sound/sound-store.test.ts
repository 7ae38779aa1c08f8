import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { hearingAnswer, hearingFolders, type HearingFolders } from '@/lib/hearing';
import { soundKinds } from '@/lib/sound';

let folders: HearingFolders;
let root: string;
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'sounds-'));
  folders = hearingFolders(root);
});
afterEach(() => {
  rmSync(root, { recursive: true });
});

const factsOf = (file: string, content: string) => ({
  file,
  bytes: content.length,
  sha256: createHash('sha256').update(content).digest('hex'),
});
const put = (name: string, { model = 'a model', kinds = '{"Hammer":"impactTool"}' } = {}): void => {
  const folder = join(folders.sounds, name);
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'model.tflite'), 'a model');
  writeFileSync(join(folder, 'kinds.json'), kinds);
  const manifest = {
    name,
    licence: 'test',
    model: factsOf('model.tflite', model),
    kinds: factsOf('kinds.json', kinds),
  };
  writeFileSync(join(folder, 'manifest.json'), JSON.stringify(manifest));
};
const ask = (path: string, from = folders): Promise<Response> =>
  hearingAnswer(from, new Request(`http://kiosk.test${path}`), false);

describe('the classifier that is served', () => {
  it('comes with its table, under an address that carries its checksum', async () => {
    put('bay-sounds-1');
    const facts = (await (await ask('/hearing/sound.json')).json()) as { url: string };
    expect(facts).toMatchObject({ name: 'bay-sounds-1', kinds: { Hammer: 'impactTool' } });
    expect(facts.url).toMatch(/^\/hearing\/sound\/[0-9a-f]{16}\/model\.tflite$/);
    expect(await (await ask(facts.url)).text()).toBe('a model');
    expect((await ask('/hearing/sound/0/model.tflite')).status).toBe(404);
  });

  it('is another one where one has been put beside our own', async () => {
    put('bay-sounds-1');
    put('larger');
    expect(await (await ask('/hearing/sound.json')).json()).toMatchObject({ name: 'larger' });
  });

  it('is none, and said to be, where it is missing, damaged or has no proper table', async () => {
    const problem = async (): Promise<unknown> => {
      const answer = await ask('/hearing/sound.json');
      return [answer.status, ((await answer.json()) as { problem: string }).problem];
    };
    expect(await problem()).toEqual([503, 'modelMissing']);
    put('a', { model: 'another' });
    expect(await problem()).toEqual([503, 'modelCorrupt']);
    put('a', { kinds: '{"Hammer":"banging"}' });
    expect(await problem()).toEqual([503, 'modelCorrupt']);
  });

  it('is, as it comes with the product, whole, small, and knows each kind', async () => {
    const answer = await ask('/hearing/sound.json', hearingFolders(process.cwd()));
    const facts = (await answer.json()) as { bytes: number; kinds: Record<string, string> };
    expect(answer.status).toBe(200);
    expect(facts.bytes).toBeLessThan(400_000);
    expect(Object.values(facts.kinds)).toEqual([...soundKinds]);
  });
});

describe('the worker that classifies', () => {
  it('may run its program and reach our own server, and nothing else', async () => {
    mkdirSync(join(folders.built, 'audio'), { recursive: true });
    writeFileSync(join(folders.built, 'sounds.js'), '');
    writeFileSync(join(folders.built, 'audio', 'audio_wasm_internal.wasm'), '');
    const policy = (await ask('/hearing/sounds.js')).headers.get('content-security-policy');
    expect(policy).toBe(
      "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self'",
    );
    const program = await ask('/hearing/audio/audio_wasm_internal.wasm');
    expect(program.headers.get('content-type')).toBe('application/wasm');
    expect((await ask('/hearing/audio/other.js')).status).toBe(404);
  });
});
