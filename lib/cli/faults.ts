import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { clockFaults } from './faults/clocks';
import { fuzz } from './faults/fuzz';
import { killRounds } from './faults/kills';
import { networkFaults } from './faults/networks';
import { clockLines, fuzzLines, killLines, networkLines, type Told } from './faults/report';
import { errorText } from '../result';

const parts = ['requests', 'network', 'clock', 'kill'] as const;
type Part = (typeof parts)[number];

const usage = `npm run faults [-- [--seed TEXT] [--short] [${parts.join('] [')}]]`;

/** How much of each: at length, and as in `npm test`. */
const long = { rounds: 100, writes: 1000, network: 6000, clock: 2000, requests: 20_000 };
const short = { rounds: 3, writes: 200, network: 300, clock: 100, requests: 500 };

interface Wish {
  readonly seed: string;
  readonly short: boolean;
  readonly chosen: readonly Part[];
}

const partsIn = (names: readonly string[]): readonly Part[] => {
  const known = parts.filter((part) => names.includes(part));
  if (known.length !== names.length) throw new Error('there is no such part');
  return known.length === 0 ? parts : known;
};

const readWish = (args: readonly string[]): Wish => {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        seed: { type: 'string', default: '1' },
        short: { type: 'boolean', default: false },
      },
    });
    return { ...values, chosen: partsIn(positionals) };
  } catch {
    throw new Error(usage);
  }
};

const inFolder = async (work: (folder: string) => Promise<Told>): Promise<boolean> => {
  const folder = mkdtempSync(join(tmpdir(), 'baycall-faults-'));
  const began = performance.now();
  const { lines, good } = await work(folder);
  console.log(`${lines.join('\n')}\n  took ${((performance.now() - began) / 1000).toFixed(0)} s\n`);
  if (good) rmSync(folder, { recursive: true, force: true });
  else console.error(`What was left is in ${folder}.`);
  return good;
};

/** `npm run faults`: does to the store what a shop may do to it, and fails when anything acknowledged is lost. */
const main = async (): Promise<void> => {
  const wish = readWish(process.argv.slice(2));
  const { seed } = wish;
  const much = wish.short ? short : long;
  const perform: Readonly<Record<Part, (folder: string) => Promise<Told>>> = {
    requests: async (folder) => fuzzLines(await fuzz(folder, { ...much, seed })),
    network: async (folder) =>
      networkLines(await networkFaults(folder, { writes: much.network, seed })),
    clock: async (folder) => clockLines(await clockFaults(folder, { writes: much.clock, seed })),
    kill: async (folder) => killLines(await killRounds(folder, { ...much, seed })),
  };
  console.log(`Faults, seed ${seed}\n`);
  const went: boolean[] = [];
  for (const part of wish.chosen) went.push(await inFolder(perform[part]));
  if (went.includes(false)) process.exitCode = 1;
};

main().catch((error: unknown) => {
  console.error(errorText(error));
  process.exitCode = 1;
});
