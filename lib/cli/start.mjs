import { nodeProblem } from './node-version.mjs';
import { giveUp } from './steps.mjs';

const problem = nodeProblem(process.version);
if (problem !== undefined) giveUp(problem);

const { ensureInstalled } = await import('./install.mjs');
const { ensureBuilt } = await import('./build.mjs');
const { prepare, serve } = await import('./serve.mjs');

ensureInstalled();
const plan = prepare();
if (!ensureBuilt()) giveUp('The app could not be built; the reason is above.');
await serve(plan);
