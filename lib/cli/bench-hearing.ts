import { fileURLToPath } from 'node:url';
import { hearingFolders } from '../hearing';
import { buildHearing } from './build-hearing';
import { hearReport, hearTable } from './hear-report';
import { measuringBrowser, type MeasuringPage } from './hearing-browser';
import { readIndex, type Recording } from './hearing-index';
import type { Hearing } from './hearing-score';
import { serveHearing } from './hearing-server';

const root = fileURLToPath(new URL('../..', import.meta.url));
const voices = fileURLToPath(new URL('../../demo/voices', import.meta.url));

/** So many utterances one page listens to before its memory is read for the last time. */
const utterances = 200;

export interface HearingMeasures {
  readonly table: string;
  /** Resident memory of the page that holds the recogniser, MB, by how many utterances it had listened to. */
  readonly memory: readonly { readonly after: number; readonly mb: number | undefined }[];
}

const addressOf = ({ file }: Recording): string =>
  `/recordings/${file.split('/').map(encodeURIComponent).join('/')}`;

const listenTo = async (
  page: MeasuringPage,
  recordings: readonly Recording[],
): Promise<readonly Hearing[]> => {
  const meanings = await page.meanings(recordings.map(({ say }) => say));
  const heard: Hearing[] = [];
  for (const [i, recording] of recordings.entries()) {
    const meaning = meanings[i];
    if (meaning === undefined) throw new Error(`no meaning for ${recording.say}`);
    heard.push({ recording, meaning, result: await page.listen({ url: addressOf(recording) }) });
  }
  return heard;
};

/** Hears the demo's single utterances once for the table, and goes on with them until 200 have been heard. */
export const measureHearing = async (): Promise<HearingMeasures> => {
  const index = await readIndex(voices);
  if (!index.ok) throw new Error(index.error);
  const { recordings } = index.value;
  await buildHearing();
  const server = await serveHearing(hearingFolders(root), { recordings: voices });
  const browser = await measuringBrowser(server.origin);
  if (!browser.ok) throw new Error(browser.error);
  try {
    const began = performance.now();
    const page = await browser.value.openPage();
    const memoryNow = async (): Promise<number | undefined> => (await browser.value.memoryMb())[0];
    const memory = [{ after: 0, mb: await memoryNow() }];
    const hearings = await listenTo(page, recordings);
    memory.push({ after: recordings.length, mb: await memoryNow() });
    const report = hearReport(hearings, {
      browser: browser.value.version,
      modelLoadMs: page.loadMs,
      recogniserMemoryMb: memory.at(-1)?.mb,
      pages: 1,
      tookS: (performance.now() - began) / 1000,
    });
    for (let after = recordings.length; after < utterances; after += 1) {
      const again = recordings[after % recordings.length];
      if (again !== undefined) await page.listen({ url: addressOf(again) });
    }
    memory.push({ after: utterances, mb: await memoryNow() });
    return { table: hearTable(report), memory };
  } finally {
    await browser.value.close();
    await server.close();
  }
};
