import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { writeRecording } from '@/lib/cli/spoken-recording';
import type { ScriptLine } from '@/demo/script';
import type { JobEvent } from '@/lib/job';
import { testPage, chromiumPath, ownApp, testFolder } from './job-script/kiosk-browser';
import { intentOf } from './job-script/carry-out';
import { foremanAccepts, signOn } from './job-script/people';
import { expectedOf, jobIn, storedEvents, textsOf, type Expected } from './job-script/record';
import { spokenJob } from './job-script/script';
import { touch } from './job-script/touch';

const expected = expectedOf(spokenJob);
const foremanAt = expected.findIndex(({ line }) => line.how === 'foreman');
const decisions = expected.filter(({ line }) => line.how === 'foreman').length;

/** What was heard may be spelt otherwise ("for", "four") and hold a cough; it must mean what was said. */
const meaningOf = (words: string): string => JSON.stringify(intentOf(words));

/** How a happening came in and what that meant; a dictation's own words are left to its sound. */
const rowOf = (event: JobEvent | undefined, { line }: Expected): string => {
  if (event === undefined) return 'nothing';
  const [text = ''] = textsOf([event]);
  const { input } = event;
  if (input.by !== 'voice') return `${event.actor} by ${input.by}: ${text}`;
  return line.how === 'dictation' ? `in own words: ${text}` : `${meaningOf(input.said)}: ${text}`;
};

const rowWanted = ({ line, text }: Expected): string => {
  if (line.how === 'foreman') return `mara-quill by touch: ${text}`;
  return line.how === 'dictation' ? `in own words: ${text}` : `${meaningOf(line.say)}: ${text}`;
};

/** Tells what the kiosk shows as heard and what it asks, each time that changes: for whoever reads a failure. */
const watchScreen = async (page: Page): Promise<readonly string[]> => {
  const shown: string[] = [];
  page.on('console', (message) => {
    if (message.text().startsWith('shown: ')) shown.push(message.text());
  });
  await page.addInitScript(() => {
    let last = '';
    new MutationObserver(() => {
      const text = ['[aria-label="Last heard"]', '#question']
        .map((where) => document.querySelector<HTMLElement>(where)?.innerText ?? '')
        .join(' | ')
        .replaceAll('\n', ' ');
      if (text !== last) console.debug(`shown: ${(performance.now() / 1000).toFixed(1)} s ${text}`);
      last = text;
    }).observe(document, { subtree: true, childList: true, characterData: true });
  });
  return shown;
};

const pause = (ms: number): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve, ms);
  });

/** How long the kiosk may take for one line before the rest of the recording makes no sense to it. */
const patienceMs = 10_000;

/** Waits until so many happenings are stored, or one of them is not what was said, or the next one is overdue. */
const stored = async (
  address: string,
  job: string,
  count: number,
  saidMs: (line: ScriptLine) => number,
): Promise<readonly JobEvent[]> => {
  for (;;) {
    const events = await storedEvents(address, job);
    const wrong = textsOf(events).some((text, index) => text !== expected[index]?.text);
    const next = expected[events.length];
    if (wrong || next === undefined || events.length >= count) return events;
    if (performance.now() > saidMs(next.line) + patienceMs) return events;
    await pause(500);
  }
};

test('a job spoken into the microphone from first to last closes, and its record is what was said', async () => {
  const address = await ownApp();
  const job = await jobIn(address, 'bay-1');
  const recording = join(testFolder(), 'whole-job.wav');
  const endsS = await writeRecording(spokenJob, recording, await chromiumPath());
  const page = await testPage({ permissions: ['microphone'], hasTouch: true }, [
    '--use-fake-device-for-media-stream',
    '--use-fake-ui-for-media-stream',
    `--use-file-for-fake-audio-capture=${recording}%noloop`,
    '--autoplay-policy=no-user-gesture-required',
  ]);
  const asked: string[] = [];
  page.context().on('request', (request) => asked.push(request.url()));
  const shown = await watchScreen(page);
  await page.goto(`${address}/bay/bay-1`);
  await signOn(touch(page));
  await page.getByText('Listening', { exact: true }).waitFor({ timeout: 60_000 });
  const beganMs = performance.now();
  const saidMs = (line: ScriptLine): number =>
    beganMs + (endsS[spokenJob.indexOf(line)] ?? 0) * 1000;

  const before = await stored(address, job, foremanAt, saidMs);
  expect(textsOf(before), shown.join('\n')).toEqual(
    expected.slice(0, foremanAt).map(({ text }) => text),
  );
  await foremanAccepts(decisions, touch(page));

  const events = await stored(address, job, expected.length, saidMs);
  expect(
    expected.map((one, index) => rowOf(events[index], one)),
    shown.join('\n'),
  ).toEqual(expected.map(rowWanted));
  expect(events).toHaveLength(expected.length);
  await page.getByRole('heading', { name: /^Job closed/ }).waitFor();

  const notes = events.flatMap(({ happening }) =>
    happening.type === 'deviationNoted' ? [happening.reason.clip] : [],
  );
  expect(notes).toHaveLength(1);
  const clip = await page.request.get(`${address}/api/clips/${notes[0] ?? ''}`);
  expect(clip.status()).toBe(200);
  expect(clip.headers()['content-type']).toBe('audio/wav');
  const sound = await clip.body();
  expect(sound.toString('latin1', 0, 4)).toBe('RIFF');
  expect(sound.toString('latin1', 8, 12)).toBe('WAVE');
  const bytesPerSecond = sound.readUInt32LE(28);
  expect(bytesPerSecond).toBe(32_000);
  expect((sound.length - 44) / bytesPerSecond).toBeGreaterThan(1);

  const elsewhere = asked.filter(
    (url) => !url.startsWith(`${address}/`) && !url.startsWith(`blob:${address}/`),
  );
  expect(elsewhere).toEqual([]);
  expect(asked.length).toBeGreaterThan(50);
}, 900_000);
