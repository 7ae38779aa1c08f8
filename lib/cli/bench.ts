import { cpus } from 'node:os';
import { measureHearing, type HearingMeasures } from './bench-hearing';
import { measureJob, type JobMeasures } from './bench-job';
import { findChromium } from './chromium';

/** By the nearest rank. */
const quantile = (values: readonly number[], share: number): string => {
  const sorted = [...values].sort((a, b) => a - b);
  const at = sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)];
  return at === undefined ? '–' : `${at.toFixed(0)} ms`;
};
const spread = (values: readonly number[]): string =>
  `p50 ${quantile(values, 0.5)}, p95 ${quantile(values, 0.95)} (n = ${values.length})`;
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

const main = async (): Promise<void> => {
  const began = performance.now();
  const path = await findChromium();
  if (!path.ok) throw new Error(path.error);
  const hearing = await measureHearing();
  console.log(`${hearing.table}\n\n${memoryText(hearing)}\n`);
  console.log(jobText(await measureJob(path.value)));
  const tookS = (performance.now() - began) / 1000;
  const cores = cpus();
  console.log(
    `\n${tookS.toFixed(0)} s in all, on ${cores.length} × ${cores[0]?.model ?? 'unknown'}.`,
  );
};

main().catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : String(error));
  process.exitCode = 1;
});
