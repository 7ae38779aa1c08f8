import { join } from 'node:path';
import { expect, inject, test } from 'vitest';
import { demoPins } from '@/demo';
import type { ScriptLine } from '@/demo/script';
import { writeRecording } from '@/lib/cli/spoken-recording';
import { chromiumPath, testFolder, testPage } from './job-script/kiosk-browser';
import { touch } from './job-script/touch';
import { wcagFailures } from './job-script/wcag';

/**
 * What the microphone hears, while “next”, “go back” (twice), “repeat”, “yes” and “no” are asked for; with the long
 * pauses of a dictation, so that a busy machine has shown one before the next is said.
 */
const lines: readonly ScriptLine[] = [
  'bella/1-next.flac',
  'rms/1-next.flac',
  'lewis/1-go-back.flac',
  'daniel/1-repeat.flac',
  'adam/4-yes.flac',
  'george/5-no.flac',
].map((file) => ({ file, how: 'dictation', step: '', say: '', then: [] }));

test('a voice is practised aloud, and what it showed stays with the name', async () => {
  const file = join(testFolder(), 'practice.wav');
  await writeRecording(lines, file, await chromiumPath());
  const page = await testPage({ hasTouch: true, permissions: ['microphone'] }, [
    '--use-fake-device-for-media-stream',
    '--use-fake-ui-for-media-stream',
    `--use-file-for-fake-audio-capture=${file}%noloop`,
  ]);
  const hands = touch(page);
  await page.goto(`${inject('address')}/bay/bay-2`);
  await hands.press(/^Tom Ashby/);
  await hands.pin(demoPins['tom-ashby'] ?? '');
  await hands.press('Sign on');
  await page.getByRole('button', { name: /^Signed on: / }).tap();
  await hands.press('Practise your voice');
  await hands.press('Begin');
  const asked = (say: string): Promise<void> =>
    page.getByText(`“${say}”`, { exact: true }).waitFor({ timeout: 30_000 });
  await page.getByText(/^Heard “next”: right/).waitFor({ timeout: 60_000 });
  await asked('go back');
  await page.getByText(/^Heard “next”: something else/).waitFor({ timeout: 30_000 });
  expect(await wcagFailures(page)).toEqual([]);
  await page.getByText('Say it again, 2 of 2').waitFor();
  await asked('torqued five');
  await hands.press('Enough, show the results');
  await page.getByText('4 of 5 work').waitFor();
  await page.getByText('works at times').waitFor();
  await page.getByText(/^Heard “next”: something else.* · Heard “go back”: right/).waitFor();
  expect(await wcagFailures(page)).toEqual([]);
  await hands.press('Keep this with my name');
  await page.getByRole('button', { name: /^Signed on: / }).tap();
  await hands.press('Practise your voice');
  await page.getByText('4 of 5 worked, with the speech model en-bay-3.').waitFor();
  await page.getByText(/^Phrases under \d+ % sure are asked for again\.$/).waitFor();
});
