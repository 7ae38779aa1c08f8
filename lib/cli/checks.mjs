import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { ensureBuilt } from './build.mjs';
import { inRoot, runPackage, runTypeScript, say, workFolder } from './steps.mjs';

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

/** Every check of the project, cheapest first. The browser tests need the built app and Chromium. */
const checks = [
  [
    'formatting (prettier)',
    () => check(runPackage('prettier/bin/prettier.cjs', ['--check', '--log-level=warn', '.'])),
  ],
  ['route types (next typegen)', () => check(runPackage('next/dist/bin/next', ['typegen']))],
  ['types (tsc)', () => check(runPackage('typescript/bin/tsc', ['--noEmit', '-p', '.']))],
  ['rules (eslint)', () => check(runPackage('eslint/bin/eslint.js', ['.']))],
  ['tests of the core', () => tests('core')],
  ['build', () => check(ensureBuilt())],
  ['Chromium', () => check(findChromium())],
  ['tests in the browser', () => tests('browser')],
];

function findChromium() {
  if (!existsSync(inRoot('lib', 'cli', 'chromium.ts'))) return true;
  return runTypeScript([inRoot('lib', 'cli', 'chromium.ts')]).status === 0;
}

/** Runs all checks, whatever becomes of each, and adds up the tests and the failed checks. */
export const runChecks = () => {
  const total = { passed: 0, failed: 0, broken: [] };
  for (const [name, perform] of checks) {
    say(`\n— ${name}`);
    const { passed, failed } = perform();
    total.passed += passed;
    total.failed += failed;
    if (failed > 0) total.broken.push(`Failed: ${name}`);
  }
  return total;
};
