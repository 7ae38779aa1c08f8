import { nodeProblem } from './node-version.mjs';
import { giveUp } from './steps.mjs';

const problem = nodeProblem(process.version);
if (problem !== undefined) giveUp(problem);

const { ensureInstalled } = await import('./install.mjs');
const { runChecks } = await import('./checks.mjs');

ensureInstalled();
const { passed, failed, broken } = runChecks();
for (const line of broken) console.error(line);
console.log(`${passed} passed, ${failed} failed`);
if (failed > 0) process.exitCode = 1;
