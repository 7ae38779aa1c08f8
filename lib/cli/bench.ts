import { cpus } from 'node:os';
import { measureAppends } from './bench-appends';
import { measureHearing, type HearingMeasures } from './bench-hearing';
import { measureJob, type JobMeasures } from './bench-job';
import { measureLarge } from './bench-large';
import { measureReview } from './bench-review';
import { reviewText } from './bench-review-text';
import { appendsText, largeText } from './bench-store-text';
import { quantileText } from './bench-times';
import { measureWall, type WallMeasures } from './bench-wall';
import { findChromium } from './chromium';
import { errorText } from '../result';

const spread = (values: readonly number[]): string =>
  `p50 ${quantileText(values, 0.5, 0)}, p95 ${quantileText(values, 0.95, 0)} (n = ${values.length})`;
const megabytes = (mb: number | undefined): string =>
  mb === undefined ? 'not told by this system' : `${mb.toFixed(0)} MB`;

const jobText = (job: JobMeasures): string =>
  [
    `The real app, spoken to through the browser's microphone: ${job.lines} lines of the demo's whole job`,
    `  stored as said                  ${job.storedAsSaid}/${job.storing} lines that store something`,
    `  end of speech to event stored   ${spread(job.toStoredMs)}`,
    `  end of speech to screen painted ${spread(job.toPaintedMs)}`,
    `  model load, cold                ${job.coldLoadMs.toFixed(0)} ms (nothing kept by the browser yet)`,
    `  model load, warm                ${job.warmLoadMs.toFixed(0)} ms (the page loaded again)`,
    `  page memory at the end          ${megabytes(job.rendererMb)} resident`,
    'End of speech: as above, its place in the recording put on the page’s clock by five tones before the first word, heard',
    'beside the kiosk from the same microphone (about ±20 ms). Stored: the answer of the server has come, which it gives once',
    'the event is on disk. Painted: the second frame after “last heard” has changed. The screen does not wait for the store.',
    'Load: from the first “loading” on the screen until it listens.',
  ].join('\n');

const memoryText = ({ memory }: HearingMeasures): string =>
  [
    'Resident memory of the page that holds the recogniser',
    ...memory.map(
      ({ after, mb }) =>
        `  after ${String(after).padStart(3)} utterances            ${megabytes(mb)}`,
    ),
  ].join('\n');

const wallText = (wall: WallMeasures): string =>
  [
    `The wall over ${wall.bays} bays that store ${wall.perSecond} events a second together (${wall.events} in all)`,
    `  request to event stored         ${spread(wall.toStoredMs)}`,
    `  event stored to wall painted    ${spread(wall.toPaintedMs)}`,
    `  shown only with a later one     ${wall.unseen}`,
    `  server memory before and after  ${wall.serverMb.map(megabytes).join(', ')} resident`,
    `  page memory at the end          ${megabytes(wall.pageMb)} resident`,
    `A simulated week on the wall: ${wall.week.messages} messages, told in ${wall.week.tookS.toFixed(0)} s`,
    `  page heap, first, half, end     ${wall.week.heapMb.map((mb) => `${mb.toFixed(1)} MB`).join(', ')} after a collection`,
    'Stored: the answer of the server has come. Painted: the second frame after the bay’s tile took the event’s number,',
    'on the same machine’s clock; one that was painted before its answer came counts as 0.',
  ].join('\n');

/** What can be measured by itself: `npm run bench -- wall`. */
const parts = ['appends', 'large', 'review', 'hearing', 'job', 'wall'] as const;

const chromium = async (): Promise<string> => {
  const path = await findChromium();
  if (!path.ok) throw new Error(path.error);
  return path.value;
};

const main = async (): Promise<void> => {
  const began = performance.now();
  const chosen = process.argv.slice(2);
  const unknown = chosen.find((name) => !parts.some((part) => part === name));
  if (unknown !== undefined)
    throw new Error(`There is no part "${unknown}". Use: npm run bench -- [${parts.join('] [')}]`);
  const wants = (part: (typeof parts)[number]): boolean =>
    chosen.length === 0 || chosen.includes(part);
  if (wants('appends')) console.log(`${appendsText(await measureAppends())}\n`);
  if (wants('large')) console.log(`${largeText(await measureLarge())}\n`);
  if (wants('review')) console.log(`${reviewText(await measureReview())}\n`);
  if (wants('hearing')) {
    const hearing = await measureHearing();
    console.log(`${hearing.table}\n\n${memoryText(hearing)}\n`);
  }
  if (wants('job')) console.log(`${jobText(await measureJob(await chromium()))}\n`);
  if (wants('wall')) console.log(wallText(await measureWall(await chromium())));
  const tookS = (performance.now() - began) / 1000;
  const cores = cpus();
  console.log(
    `\n${tookS.toFixed(0)} s in all, on ${cores.length} × ${cores[0]?.model ?? 'unknown'}.`,
  );
};

main().catch((error: unknown) => {
  console.error(errorText(error));
  process.exitCode = 1;
});
