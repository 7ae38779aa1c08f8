import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { clockFaults } from './faults/clocks';
import { fuzz } from './faults/fuzz';
import { killRounds } from './faults/kills';
import { networkFaults } from './faults/networks';
import { clockLines, fuzzLines, killLines, networkLines, type Told } from './faults/report';

const usage = 'npm run faults [-- --seed TEXT] [--short]';

/** How much of each: at length, and as in `npm test`. */
const long = { rounds: 100, writes: 1000, network: 6000, clock: 2000, requests: 20_000 };
const short = { rounds: 3, writes: 200, network: 300, clock: 100, requests: 500 };

const readWish = (args: readonly string[]): { seed: string; short: boolean } => {
  try {
    return parseArgs({
      args: [...args],
      options: {
        seed: { type: 'string', default: '1' },
        short: { type: 'boolean', default: false },
      },
    }).values;
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
  console.log(`Faults, seed ${seed}\n`);
  const went = [
    await inFolder(async (folder) => fuzzLines(await fuzz(folder, { ...much, seed }))),
    await inFolder(async (folder) =>
      networkLines(await networkFaults(folder, { writes: much.network, seed })),
    ),
    await inFolder(async (folder) =>
      clockLines(await clockFaults(folder, { writes: much.clock, seed })),
    ),
    await inFolder(async (folder) => killLines(await killRounds(folder, { ...much, seed }))),
  ];
  if (went.includes(false)) process.exitCode = 1;
};

main().catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : String(error));
  process.exitCode = 1;
});
