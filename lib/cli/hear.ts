import { writeFile } from 'node:fs/promises';
import { cpus } from 'node:os';
import { fileURLToPath } from 'node:url';
import type { Trial } from '../../components/microphone/measure/check';
import { hearingFolders } from '../hearing';
import { errorText, ok } from '../result';
import { buildHearing } from './build-hearing';
import { readHearArguments, type HearArguments } from './hear-arguments';
import { hearReport, hearTable } from './hear-report';
import { measuringBrowser, type MeasuringBrowser, type MeasuringPage } from './hearing-browser';
import { readIndex, soundFiles, type Recording } from './hearing-index';
import { kindsInTurn, noiseKindOf } from './hearing-rates';
import type { Hearing } from './hearing-score';
import { serveHearing } from './hearing-server';

const root = fileURLToPath(new URL('../..', import.meta.url));

const giveUp = (line: string): never => {
  console.error(line);
  process.exit(1);
};

const addressOf = (share: string, file: string): string =>
  `/${share}/${file.split('/').map(encodeURIComponent).join('/')}`;

interface Task {
  readonly recording: Recording;
  readonly snrDb?: number;
  readonly noiseKind?: string;
  readonly noiseAlone?: true;
  readonly trial: Trial;
}

/** Every recording as it is, and once for each noise level with a noise chosen by its place in the index. */
const tasksOf = (
  recordings: readonly Recording[],
  noises: readonly string[],
  snrDbs: readonly number[],
): readonly Task[] =>
  recordings.flatMap((recording, i) => {
    const url = addressOf('recordings', recording.file);
    const noise = noises[i % Math.max(1, noises.length)];
    const mixed =
      noise === undefined
        ? []
        : snrDbs.map((snrDb) => ({
            recording,
            snrDb,
            noiseKind: noiseKindOf(noise),
            trial: { url, noise: { url: addressOf('noise', noise), snrDb, seed: i } },
          }));
    return [{ recording, trial: { url } }, ...mixed];
  });

/** Every noise by itself: nothing is said in it. */
const noiseTasks = (noises: readonly string[]): readonly Task[] =>
  noises.map((file) => ({
    recording: { file, say: '', group: 'noise alone' },
    noiseKind: noiseKindOf(file),
    noiseAlone: true,
    trial: { url: addressOf('noise', file) },
  }));

/** Shares the tasks among the pages; the results come in the order of the tasks. */
const listenToAll = async (
  pages: readonly MeasuringPage[],
  tasks: readonly Task[],
  meanings: ReadonlyMap<string, Hearing['meaning']>,
): Promise<readonly Hearing[]> => {
  const results: Hearing[] = [];
  const open = tasks.entries();
  const work = async (page: MeasuringPage): Promise<void> => {
    for (const [i, { recording, trial, ...about }] of open) {
      const meaning = meanings.get(recording.say);
      if (meaning === undefined) throw new Error(`no meaning for ${recording.say}`);
      const result = await page.listen(trial);
      if (result.problem !== undefined) console.error(`${recording.file}: ${result.problem}.`);
      results[i] = { recording, ...about, meaning, result };
    }
  };
  await Promise.all(pages.map(work));
  return results;
};

const openPages = async (
  browser: MeasuringBrowser,
): Promise<readonly [MeasuringPage, ...MeasuringPage[]]> => {
  const first = await browser.openPage();
  const others = await Promise.all(
    Array.from({ length: Math.min(cpus().length, 4) - 1 }, () => browser.openPage()),
  );
  return [first, ...others];
};

const measure = async (
  browser: MeasuringBrowser,
  { json }: HearArguments,
  tasks: readonly Task[],
): Promise<void> => {
  const began = performance.now();
  const pages = await openPages(browser);
  const says = [...new Set(tasks.map(({ recording }) => recording.say))];
  const understood = await pages[0].meanings(says);
  const meanings = new Map(
    says.flatMap((say, i) => {
      const meaning = understood[i];
      return meaning === undefined ? [] : [[say, meaning] as const];
    }),
  );
  const hearings = await listenToAll(pages, tasks, meanings);
  const report = hearReport(hearings, {
    browser: browser.version,
    modelLoadMs: pages[0].loadMs,
    recogniserMemoryMb: (await browser.memoryMb())[0],
    pages: pages.length,
    tookS: (performance.now() - began) / 1000,
  });
  console.log(hearTable(report));
  if (json !== undefined) await writeFile(json, `${JSON.stringify(report, undefined, 1)}\n`);
};

const main = async (): Promise<void> => {
  const read = readHearArguments(process.argv.slice(2));
  if (!read.ok) return giveUp(read.error);
  const { dir, noise, snrDbs, voices } = read.value;
  const index = await readIndex(dir, voices);
  if (!index.ok) return giveUp(index.error);
  for (const problem of index.value.problems) console.error(`index.tsv, ${problem}.`);
  const noises = noise === undefined ? ok([]) : await soundFiles(noise);
  if (!noises.ok) return giveUp(noises.error);
  await buildHearing();
  const shared = { recordings: dir, ...(noise === undefined ? {} : { noise }) };
  const server = await serveHearing(hearingFolders(root), shared);
  const browser = await measuringBrowser(server.origin);
  if (!browser.ok) return giveUp(browser.error);
  try {
    const tasks = [
      ...tasksOf(index.value.recordings, kindsInTurn(noises.value), snrDbs),
      ...noiseTasks(noises.value),
    ];
    await measure(browser.value, read.value, tasks);
  } finally {
    await browser.value.close();
    await server.close();
  }
};

main().catch((error: unknown) => {
  const [line = ''] = errorText(error).split('\n');
  giveUp(line);
});
