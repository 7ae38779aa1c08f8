import { existsSync, rmSync } from 'node:fs';
import { fingerprint } from './fingerprint.mjs';
import { giveUp, inRoot, readStamp, root, run, say, writeStamp } from './steps.mjs';

/** Installs exactly what the lock file says, where that has not been done yet on this kind of machine. */
export const ensureInstalled = () => {
  const machine = `${process.platform} ${process.arch}`;
  const wanted = fingerprint(root, ['package-lock.json'], machine);
  if (existsSync(inRoot('node_modules')) && readStamp('installed') === wanted) return;
  say('Installing the packages of the lock file …');
  const npm = process.env.npm_execpath;
  const args = ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error'];
  const done =
    npm !== undefined && npm.endsWith('.js')
      ? run(process.execPath, [npm, ...args])
      : run('npm', args);
  if (!done) giveUp('The packages could not be installed; npm says why above.');
  // The framework's cache remembers how the packages were before.
  rmSync(inRoot('.next'), { recursive: true, force: true });
  writeStamp('installed', wanted);
};
