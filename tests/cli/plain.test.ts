import { execFileSync } from 'node:child_process';
import { mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test, vi } from 'vitest';
import { testFolder } from '../store/fresh-store';

vi.setConfig({ testTimeout: 60_000 });

const cli = (name: string): string =>
  fileURLToPath(new URL(`../../lib/cli/${name}`, import.meta.url));

/** Calls a function of a module that runs before anything is installed, as plain Node does. */
const call = (module: string, name: string, ...args: readonly unknown[]): unknown => {
  const script = `import { ${name} } from ${JSON.stringify(cli(module))};
    console.log(JSON.stringify(${name}(...${JSON.stringify(args)}) ?? null));`;
  const out = execFileSync(process.execPath, ['--input-type=module', '--eval', script]);
  return JSON.parse(out.toString());
};

test.each(['v20.9.0', 'v20.20.2', 'v22.0.0', 'v24.1.0'])('Node %s will do', (version) => {
  expect(call('node-version.mjs', 'nodeProblem', version)).toBeNull();
});

test.each(['v20.8.1', 'v18.20.4', 'v9.0.0'])('Node %s is refused in one line', (version) => {
  expect(call('node-version.mjs', 'nodeProblem', version)).toBe(
    `Baycall needs Node 20.9 or later; this is Node ${version}.`,
  );
});

test('what is built again follows from names and contents of the sources, and from nothing else', () => {
  const folder = testFolder();
  mkdirSync(join(folder, 'app'));
  writeFileSync(join(folder, 'app', 'page'), 'one');
  writeFileSync(join(folder, 'notes'), 'not a source');
  const print = () => call('fingerprint.mjs', 'fingerprint', folder, ['app', 'missing'], 'node');
  const first = print();
  expect(first).toMatch(/^[0-9a-f]{64}$/);

  writeFileSync(join(folder, 'notes'), 'still not a source');
  expect(print()).toBe(first);

  writeFileSync(join(folder, 'app', 'page'), 'two');
  expect(print()).not.toBe(first);

  writeFileSync(join(folder, 'app', 'page'), 'one');
  expect(print()).toBe(first);

  renameSync(join(folder, 'app', 'page'), join(folder, 'app', 'other'));
  expect(print()).not.toBe(first);

  rmSync(join(folder, 'app'), { recursive: true });
  expect(print()).not.toBe(first);
});
