import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Page } from 'playwright-core';
import { z } from 'zod';
import { demoPins } from '../../demo';
import { happeningText, parseScript, type ScriptLine } from '../../demo/script';
import { jobEventSchema } from '../job';
import { noteMarks, type Marks } from './bench-marks';
import { chromiumFlags } from './chromium';
import { memoryMb } from './hearing-browser';
import { inPage } from './in-page';
import { toneAtS, writeRecording } from './spoken-recording';
import { startApp } from './start-app';

/** What was measured in the real app, over lines of the demo's whole job spoken into Chromium's microphone. */
export interface JobMeasures {
  readonly lines: number;
  /** Lines that store something, and how many of them stored what the script says. */
  readonly storing: number;
  readonly storedAsSaid: number;
  readonly toStoredMs: readonly number[];
  readonly toPaintedMs: readonly number[];
  readonly coldLoadMs: number;
  readonly warmLoadMs: number;
  readonly rendererMb: number | undefined;
}

const person = 'tom-ashby';
const mostLines = 32;

/** The job up to its first reason in the mechanic's own words. */
const spokenLines = (): readonly ScriptLine[] => {
  const table = readFileSync(new URL('../../demo/voices/whole-job.tsv', import.meta.url), 'utf8');
  const script = parseScript(table);
  const first = script.findIndex(({ how }) => how !== 'phrase');
  return script.slice(0, Math.min(mostLines, first - 1));
};

const signOn = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: /^Tom Ashby/ }).click();
  await page.getByRole('button', { name: 'Sign on', exact: true }).waitFor();
  await page.keyboard.type(demoPins[person] ?? '');
  await page.getByRole('button', { name: 'Sign on', exact: true }).click();
};

const loadMs = async (page: Page): Promise<number> => {
  await page.getByText('Listening', { exact: true }).waitFor({ timeout: 60_000 });
  const { loading, listening } = await page.evaluate(() => window.benchMarks);
  return (listening[0] ?? Number.NaN) - (loading[0] ?? Number.NaN);
};

/** When the recording began, on the page's clock: by the earliest of the tones, since all that delays one comes on top. */
const beginningMs = ({ sounds }: Marks): number => {
  const first = sounds[0] ?? Number.NaN;
  const tones = sounds.filter((at) => at < first + 1600);
  if (tones.length !== toneAtS.length)
    throw new Error(
      `${tones.length} of ${toneAtS.length} tones were heard: the machine is too busy to measure.`,
    );
  return Math.min(...tones.map((at, i) => at - (toneAtS[i] ?? Number.NaN) * 1000));
};

const storedTexts = async (address: string): Promise<readonly string[]> => {
  const get = async (path: string): Promise<unknown> => (await fetch(`${address}${path}`)).json();
  const bay = z.object({ job: z.object({ id: z.string() }) }).parse(await get('/api/bays/bay-1'));
  const { events } = z
    .object({ events: z.array(jobEventSchema) })
    .parse(await get(`/api/jobs/${bay.job.id}`));
  return events.slice(1).map(({ happening }) => happeningText(happening));
};

const listen = async (page: Page, lines: readonly ScriptLine[], endsS: readonly number[]) => {
  await page.waitForTimeout(((endsS.at(-1) ?? 0) + 3) * 1000);
  const marks = await page.evaluate(() => window.benchMarks);
  const beganMs = beginningMs(marks);
  const endMs = (line: number): number => beganMs + (endsS[line] ?? Infinity) * 1000;
  const delays = (times: readonly number[]): readonly number[] =>
    lines.flatMap(({ then }, line) => {
      const at = times.find((time) => time > endMs(line) && time < endMs(line + 1));
      return at === undefined || then.length === 0 ? [] : [at - endMs(line)];
    });
  return { toStoredMs: delays(marks.stored), toPaintedMs: delays(marks.painted) };
};

const inFolder = async (folder: string, chromiumPath: string): Promise<JobMeasures> => {
  const lines = spokenLines();
  const file = join(folder, 'spoken.wav');
  const endsS = await writeRecording(lines, file, chromiumPath, { tones: true });
  const app = await startApp(join(folder, 'data'));
  const browser = await chromium.launch({
    executablePath: chromiumPath,
    args: [
      ...chromiumFlags(),
      '--use-fake-device-for-media-stream',
      '--use-fake-ui-for-media-stream',
      `--use-file-for-fake-audio-capture=${file}%noloop`,
      '--autoplay-policy=no-user-gesture-required',
    ],
  });
  try {
    const context = await browser.newContext({
      viewport: { width: 1920, height: 1080 },
      permissions: ['microphone'],
    });
    await context.addInitScript(inPage(noteMarks));
    const page = await context.newPage();
    await page.goto(`${app.address}/bay/bay-1`);
    await signOn(page);
    const coldLoadMs = await loadMs(page);
    const delays = await listen(page, lines, endsS);
    const [rendererMb] = await memoryMb(browser);
    const stored = await storedTexts(app.address);
    await page.reload();
    const warmLoadMs = await loadMs(page);
    const wanted = lines.flatMap(({ then }) => then);
    const storing = lines.filter(({ then }) => then.length > 0);
    const rightUntil = wanted.findIndex((text, i) => stored[i] !== text);
    return {
      lines: lines.length,
      storing: storing.length,
      storedAsSaid:
        rightUntil < 0
          ? storing.length
          : storing.filter(
              (_, i) => storing.slice(0, i + 1).flatMap(({ then }) => then).length <= rightUntil,
            ).length,
      ...delays,
      coldLoadMs,
      warmLoadMs,
      rendererMb,
    };
  } finally {
    await browser.close();
    await app.stop();
  }
};

/** Starts the app over a fresh demo shop, speaks to it, and measures. */
export const measureJob = async (chromiumPath: string): Promise<JobMeasures> => {
  const folder = mkdtempSync(join(tmpdir(), 'baycall-bench-'));
  try {
    return await inFolder(folder, chromiumPath);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};
