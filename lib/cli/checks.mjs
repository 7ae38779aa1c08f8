import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { ensureBuilt } from './build.mjs';
import { runPackage, runTypeScript, say, workFolder } from './steps.mjs';

/** Reads what a vitest run reported. A file that could not even be loaded counts as one failed test. */
const count = (path) => {
  const report = JSON.parse(readFileSync(path, 'utf8'));
  const unloaded = report.testResults.filter(
    (file) => file.status === 'failed' && file.assertionResults.length === 0,
  ).length;
  return { passed: report.numPassedTests, failed: report.numFailedTests + unloaded };
};

const tests = (project) => {
  const path = join(workFolder, 'tests', `${project}.json`);
  rmSync(path, { force: true });
  const went = runPackage(
    'vitest/vitest.mjs',
    [
      'run',
      '--project',
      project,
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${path}`,
    ],
    { NODE_ENV: undefined },
  );
  const seen = existsSync(path) ? count(path) : { passed: 0, failed: 0 };
  // A run that ended badly without a failed test (an error outside any test, no test at all) has failed all the same.
  return went || seen.failed > 0 ? seen : { ...seen, failed: 1 };
};

const check = (went) => ({ passed: 0, failed: went ? 0 : 1 });

const findsChromium = () =>
  runTypeScript([
    '--input-type=module',
    '--eval',
    `import { findChromium } from './lib/cli/chromium.ts';
     const found = await findChromium();
     if (!found.ok) { console.error(found.error); process.exitCode = 1; }`,
  ]).status === 0;

/** Every check of the project, cheapest first; `needs` names the checks without which one makes no sense. */
const checks = [
  {
    name: 'formatting (prettier)',
    perform: () =>
      check(runPackage('prettier/bin/prettier.cjs', ['--check', '--log-level=warn', '.'])),
  },
  {
    name: 'route types (next typegen)',
    perform: () => check(runPackage('next/dist/bin/next', ['typegen'])),
  },
  {
    name: 'types (tsc)',
    perform: () => check(runPackage('typescript/bin/tsc', ['--noEmit', '-p', '.'])),
  },
  { name: 'rules (eslint)', perform: () => check(runPackage('eslint/bin/eslint.js', ['.'])) },
  { name: 'tests of the core', perform: () => tests('core') },
  { name: 'build', perform: () => check(ensureBuilt()) },
  { name: 'Chromium', perform: () => check(findsChromium()) },
  {
    name: 'tests in the browser',
    needs: ['build', 'Chromium'],
    perform: () => tests('browser'),
  },
];

/** Runs all checks, whatever becomes of each, and adds up the tests and the failed checks. */
export const runChecks = () => {
  const total = { passed: 0, failed: 0, broken: [] };
  const broken = new Set();
  for (const { name, needs = [], perform } of checks) {
    say(`\n— ${name}`);
    const missing = needs.filter((need) => broken.has(need));
    const { passed, failed } = missing.length > 0 ? check(false) : perform();
    total.passed += passed;
    total.failed += failed;
    if (failed === 0) continue;
    broken.add(name);
    total.broken.push(
      missing.length > 0
        ? `Not run: ${name}, for want of: ${missing.join(', ')}`
        : `Failed: ${name}`,
    );
  }
  return total;
};
