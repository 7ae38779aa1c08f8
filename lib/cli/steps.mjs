import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../../', import.meta.url)).replace(/[\\/]$/, '');
export const inRoot = (...parts) => join(root, ...parts);

/** Where the commands note what they have already done; git ignores it. */
export const workFolder = inRoot('.build');

export const say = (line) => console.log(line);

/** Ends the program with one line on stderr. */
export const giveUp = (line) => {
  console.error(line);
  process.exit(1);
};

const environment = (extra) => {
  const all = { ...process.env, NEXT_TELEMETRY_DISABLED: '1', ...extra };
  for (const name of Object.keys(all)) if (all[name] === undefined) delete all[name];
  return all;
};

/** Runs a program to its end with its output on the screen; tells whether it went well. */
export const run = (command, args, extra = {}) => {
  const options = { cwd: root, stdio: 'inherit', env: environment(extra) };
  const { status, signal, error } = spawnSync(command, args, options);
  // A program that was killed, or never began, has said nothing itself.
  if (signal !== null) console.error(`${command} ${args.join(' ')} was ended by ${signal}.`);
  if (error !== undefined) console.error(`${command} cannot be run: ${error.message}`);
  return status === 0;
};

/** Runs a program of an installed package, past the shell and its wrappers. */
export const runPackage = (path, args, extra = {}) =>
  run(process.execPath, [inRoot('node_modules', path), ...args], extra);

/** Runs TypeScript of our own. Answers status and what it printed on stdout; stderr goes to the screen. */
export const runTypeScript = (args, extra = {}) =>
  spawnSync(process.execPath, ['--import', 'tsx', ...args], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'inherit'],
    encoding: 'utf8',
    env: environment(extra),
  });

export const readStamp = (name) => {
  try {
    return readFileSync(join(workFolder, name), 'utf8');
  } catch (error) {
    if (error.code === 'ENOENT') return undefined;
    throw error;
  }
};

export const writeStamp = (name, text) => {
  const path = join(workFolder, name);
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
};
