import { createReadStream } from 'node:fs';
import { readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import type { Result } from '../result';
import { findSoundModel, type SoundModel } from './sound-store';
import { findModel, type Model, type ModelFolders, type ModelTrouble } from './model-store';

/** Where the things lie that are served under `/hearing`. */
export interface HearingFolders extends ModelFolders {
  /** Bundles made by `buildHearing`. */
  readonly built: string;
  /** Classifiers of sound. */
  readonly sounds: string;
}

export const hearingFolders = (root: string): HearingFolders => ({
  models: join(root, 'models', 'speech'),
  packed: join(root, '.build', 'hearing', 'models'),
  built: join(root, '.build', 'hearing'),
  sounds: join(root, 'models', 'sound'),
});

/**
 * The recogniser makes functions from text and runs WebAssembly, in a worker made from a blob: only this worker's own
 * policy allows that; the blob worker inherits it, the page does not.
 */
const workerPolicy =
  "default-src 'none'; script-src 'self' 'wasm-unsafe-eval' 'unsafe-eval'; worker-src 'self' blob:; connect-src 'self'";
/**
 * The classifier runs WebAssembly and nothing else. Its package sends usage statistics to its maker: `connect-src`
 * keeps them here.
 */
const soundsPolicy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self'";
const checkPolicy =
  "default-src 'none'; script-src 'self'; worker-src 'self'; connect-src 'self'; media-src 'self' blob:; base-uri 'none'; form-action 'none'";

const checkPage = `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>Measuring the hearing</title>
<script src="/hearing/check.js" defer></script></head><body><p>Measuring the hearing.</p></body></html>
`;

const notFound = (): Response => new Response('Not found\n', { status: 404 });

const json = (body: unknown, status: number): Response =>
  Response.json(body, { status, headers: { 'cache-control': 'no-store' } });

interface Found {
  readonly stamp: string;
  readonly model: Result<Model, ModelTrouble>;
}
const shelf = new Map<string, Promise<Found>>();

const find = async (folders: ModelFolders): Promise<Found> => {
  const model = await findModel(folders);
  return { model, stamp: model.ok ? await stampOf(model.value.path) : '' };
};

/** Finding a model reads all of it; it is done again only after trouble, or when the file's size or time has changed. */
const modelIn = async (folders: ModelFolders): Promise<Result<Model, ModelTrouble>> => {
  const known = await shelf.get(folders.models);
  if (known?.model.ok && (await stampOf(known.model.value.path)) === known.stamp)
    return known.model;
  const finding = find(folders);
  shelf.set(folders.models, finding);
  return (await finding).model;
};

const stampOf = async (path: string): Promise<string> => {
  try {
    const { size, mtimeMs } = await stat(path);
    return `${size} ${mtimeMs}`;
  } catch {
    return 'gone';
  }
};

const modelUrl = ({ sha256 }: Model): string =>
  `/hearing/model/${sha256.slice(0, 16)}/model.tar.gz`;

const facts = (found: Result<Model, ModelTrouble>): Response => {
  if (!found.ok) return json(found.error, 503);
  const { name, language, licence, bytes, sha256 } = found.value;
  return json({ name, language, licence, bytes, sha256, url: modelUrl(found.value) }, 200);
};

const archive = (found: Result<Model, ModelTrouble>, path: string): Response => {
  if (!found.ok) return json(found.error, found.error.problem === 'modelMissing' ? 404 : 503);
  if (path !== modelUrl(found.value)) return notFound();
  const body = Readable.toWeb(createReadStream(found.value.path)) as ReadableStream<Uint8Array>;
  return new Response(body, {
    headers: {
      'content-type': 'application/octet-stream',
      'content-length': String(found.value.bytes),
      'cache-control': 'public, max-age=31536000, immutable',
    },
  });
};

const soundUrl = ({ sha256 }: SoundModel): string =>
  `/hearing/sound/${sha256.slice(0, 16)}/model.tflite`;

const soundFacts = (found: Result<SoundModel, ModelTrouble>): Response => {
  if (!found.ok) return json(found.error, 503);
  const { name, licence, bytes, sha256, kinds } = found.value;
  return json({ name, licence, bytes, sha256, kinds, url: soundUrl(found.value) }, 200);
};

const soundFile = async (
  found: Result<SoundModel, ModelTrouble>,
  path: string,
): Promise<Response> => {
  if (!found.ok || path !== soundUrl(found.value)) return notFound();
  return new Response(new Uint8Array(await readFile(found.value.path)), {
    headers: {
      'content-type': 'application/octet-stream',
      'cache-control': 'public, max-age=31536000, immutable',
    },
  });
};

const policies: Readonly<Record<string, string>> = {
  'worker.js': workerPolicy,
  'sounds.js': soundsPolicy,
};

const contentType = (name: string): string =>
  name.endsWith('.wasm') ? 'application/wasm' : 'text/javascript; charset=utf-8';

const script = async (folder: string, name: string, request: Request): Promise<Response> => {
  const path = join(folder, name);
  const etag = `"${(await stampOf(path)).replace(/\W/g, '-')}"`;
  const headers: Record<string, string> = {
    'content-type': contentType(name),
    'cache-control': 'no-cache',
    'x-content-type-options': 'nosniff',
    etag,
    ...(policies[name] === undefined ? {} : { 'content-security-policy': policies[name] }),
  };
  if (request.headers.get('if-none-match') === etag)
    return new Response(null, { status: 304, headers });
  return new Response(new Uint8Array(await readFile(path)), { headers });
};

const servedScript =
  /^\/hearing\/(worker|sounds|worklet|audio\/audio_wasm(_nosimd)?_internal)\.(js|wasm)$/;

/** Answers a GET for anything under `/hearing`. `measure`: whether the measuring page is there. */
export const hearingAnswer = async (
  folders: HearingFolders,
  request: Request,
  measure: boolean,
): Promise<Response> => {
  const { pathname } = new URL(request.url);
  if (servedScript.test(pathname))
    return script(folders.built, pathname.slice('/hearing/'.length), request);
  if (pathname === '/hearing/model.json') return facts(await modelIn(folders));
  if (pathname.startsWith('/hearing/model/')) return archive(await modelIn(folders), pathname);
  if (pathname === '/hearing/sound.json') return soundFacts(await findSoundModel(folders.sounds));
  if (pathname.startsWith('/hearing/sound/'))
    return soundFile(await findSoundModel(folders.sounds), pathname);
  if (measure && pathname === '/hearing/check.js')
    return script(folders.built, 'check.js', request);
  if (measure && pathname === '/hearing/check')
    return new Response(checkPage, {
      headers: {
        'content-type': 'text/html; charset=utf-8',
        'content-security-policy': checkPolicy,
      },
    });
  return notFound();
};
