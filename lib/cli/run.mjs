import { spawnSync } from 'node:child_process';
import { nodeProblem } from './node-version.mjs';
import { giveUp, inRoot, root } from './steps.mjs';

// Runs one of the measuring commands on a fresh clone too: `node lib/cli/run.mjs hear.ts ARGUMENTS`.
const problem = nodeProblem(process.version);
if (problem !== undefined) giveUp(problem);

const { ensureInstalled } = await import('./install.mjs');
ensureInstalled();

const [script, ...args] = process.argv.slice(2);
const { status } = spawnSync(
  process.execPath,
  ['--import', 'tsx', inRoot('lib', 'cli', script), ...args],
  { cwd: root, stdio: 'inherit' },
);
process.exitCode = status ?? 1;
