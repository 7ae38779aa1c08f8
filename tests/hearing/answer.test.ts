import { createHash } from 'node:crypto';
import { cpSync, mkdirSync, mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { hearingAnswer, hearingFolders, type HearingFolders } from '@/lib/hearing';

let root: string;
let folders: HearingFolders;
beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'hearing-'));
  folders = hearingFolders(root);
  cpSync('models/speech', folders.models, { recursive: true });
  mkdirSync(folders.built, { recursive: true });
  for (const name of ['worker.js', 'worklet.js', 'check.js'])
    writeFileSync(join(folders.built, name), `// ${name}\n`);
});
afterAll(() => {
  rmSync(root, { recursive: true });
});

const get = (path: string, measure = false, headers: HeadersInit = {}): Promise<Response> =>
  hearingAnswer(folders, new Request(`http://kiosk.test${path}`, { headers }), measure);

it('serves the model that is named by its checksum, whole, and for good', async () => {
  const facts = (await (await get('/hearing/model.json')).json()) as Record<string, unknown>;
  expect(facts).toMatchObject({ name: 'en-bay-3', bytes: 6_795_369 });
  const sha256 = String(facts.sha256);
  expect(facts.url).toBe(`/hearing/model/${sha256.slice(0, 16)}/model.tar.gz`);
  const answer = await get(String(facts.url));
  expect(answer.headers.get('content-length')).toBe('6795369');
  expect(answer.headers.get('cache-control')).toContain('immutable');
  const body = Buffer.from(await answer.arrayBuffer());
  expect(createHash('sha256').update(body).digest('hex')).toBe(sha256);
});

it('serves no model under another checksum', async () => {
  expect((await get('/hearing/model/0000000000000000/model.tar.gz')).status).toBe(404);
});

it('lets only the recogniser’s worker make functions from text', async () => {
  const policy = (await get('/hearing/worker.js')).headers.get('content-security-policy');
  expect(policy).toContain("'unsafe-eval'");
  expect(policy).toContain("connect-src 'self'");
  expect(policy).not.toContain('http');
  const worklet = await get('/hearing/worklet.js');
  expect(worklet.headers.get('content-type')).toContain('text/javascript');
  expect(worklet.headers.get('content-security-policy')).toBeNull();
});

it('sends a script again only when it has changed', async () => {
  const etag = (await get('/hearing/worker.js')).headers.get('etag') ?? '';
  expect((await get('/hearing/worker.js', false, { 'if-none-match': etag })).status).toBe(304);
  writeFileSync(join(folders.built, 'worker.js'), '// another worker\n');
  expect((await get('/hearing/worker.js', false, { 'if-none-match': etag })).status).toBe(200);
});

it('has the measuring page only when it is asked to measure', async () => {
  expect((await get('/hearing/check')).status).toBe(404);
  expect((await get('/hearing/check.js')).status).toBe(404);
  const page = await get('/hearing/check', true);
  expect(page.status).toBe(200);
  expect(page.headers.get('content-security-policy')).not.toContain('unsafe-eval');
});

it('knows nothing else', async () => {
  for (const path of ['/hearing/', '/hearing/../package.json', '/hearing/worker.ts'])
    expect((await get(path, true)).status).toBe(404);
});

it('says that the model is corrupt as soon as it has been cut short', async () => {
  truncateSync(join(folders.models, 'en-bay-3', 'model.tar.gz'), 3_000_000);
  const answer = await get('/hearing/model.json');
  expect(answer.status).toBe(503);
  expect(await answer.json()).toMatchObject({ problem: 'modelCorrupt' });
});
