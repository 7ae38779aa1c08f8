import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { fingerprint } from './fingerprint.mjs';
import {
  inRoot,
  readStamp,
  root,
  runPackage,
  runTypeScript,
  say,
  workFolder,
  writeStamp,
} from './steps.mjs';

const sources = [
  'app',
  'components',
  'demo',
  'lib',
  'models',
  'instrumentation.ts',
  'next.config.ts',
  'package-lock.json',
  'postcss.config.mjs',
  'proxy.ts',
  'tsconfig.json',
];

/** What is served beside the pages: the ears' workers, and the worker that keeps a kiosk's page. */
const buildWorkers = () => {
  const script =
    "import { buildHearing } from './lib/cli/build-hearing.ts';" +
    "import { buildShell } from './lib/cli/build-shell.ts';" +
    'await buildHearing(); await buildShell();';
  const { status, stdout } = runTypeScript(['--input-type=module', '--eval', script]);
  if (stdout.trim() !== '') say(stdout.trimEnd());
  return status === 0;
};

/** Builds the app where its sources have changed since the last build. Tells whether a good build is there. */
export const ensureBuilt = () => {
  const wanted = fingerprint(root, sources, process.version);
  const there =
    existsSync(inRoot('.next', 'BUILD_ID')) &&
    existsSync(join(workFolder, 'hearing')) &&
    existsSync(join(workFolder, 'shell'));
  if (there && readStamp('built') === wanted) return true;
  say('Building …');
  writeStamp('built', 'under way');
  const built =
    buildWorkers() && runPackage('next/dist/bin/next', ['build'], { NODE_ENV: 'production' });
  if (built) writeStamp('built', wanted);
  return built;
};
