import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, onTestFinished, test } from 'vitest';
import { startApp, type RunningApp } from '@/lib/cli/start-app';
import { carryOut } from './job-script/carry-out';
import { ownApp, testFolder, testPage } from './job-script/kiosk-browser';
import { keyboard } from './job-script/keyboard';
import { earsGivenUp, sayWho, signOn } from './job-script/people';
import { jobIn, storedEvents, textsOf } from './job-script/record';
import { jobByHand } from './job-script/script';
import { wcagFailures } from './job-script/wcag';

/** An app that can be switched off as by a power cut and comes back where it was, with what was on its disk. */
const appToSwitchOff = async () => {
  const folder = testFolder();
  let app: RunningApp = await startApp(folder);
  const { address } = app;
  onTestFinished(async () => {
    await app.stop();
  });
  return {
    address,
    off: () => app.kill(),
    on: async () => {
      app = await startApp(folder, {}, Number(new URL(address).port));
    },
  };
};

const notStored = /^\d+ not yet stored since \d\d:\d\d: server not reached$/;

const lines = (from: number, to: number) => jobByHand.slice(from, to);
const textsFor = (from: number, to: number): readonly string[] =>
  lines(from, to).flatMap(({ then }) => then);

/** Waits until the browser has kept what the kiosk's page is made of. */
const pageKept = (page: Page): Promise<void> =>
  expect
    .poll(
      () =>
        page.evaluate(async () => {
          const pages = await caches.open('kiosk-pages');
          return navigator.serviceWorker.controller !== null && (await pages.keys()).length > 0;
        }),
      { timeout: 60_000 },
    )
    .toBe(true);

/** Loads the recogniser as the kiosk does, and says what became of it. */
const loadEars = (page: Page): Promise<string> =>
  page.evaluate(async () => {
    const model: unknown = await (await fetch('/hearing/model.json')).json();
    const worker = new Worker('/hearing/worker.js');
    const answer = new Promise<string>((resolve) => {
      worker.onmessage = ({ data }: MessageEvent<{ kind: string; detail?: string }>) => {
        if (data.kind === 'loaded' || data.kind === 'failed')
          resolve(`${data.kind}${data.detail ?? ''}`);
      };
    });
    worker.postMessage({ kind: 'load', model, sampleRateHz: 16_000 });
    const became = await answer;
    worker.terminate();
    return became;
  });

test('a job goes on while the server is off, over a reload, and all of it arrives once and in order', async () => {
  const app = await appToSwitchOff();
  const job = await jobIn(app.address, 'bay-1');
  const page = await testPage({ serviceWorkers: 'allow' });
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (/content.security|hydrat/i.test(message.text())) complaints.push(message.text());
  });
  await page.goto(`${app.address}/bay/bay-1`);
  const hands = keyboard(page);
  await signOn(hands);
  for (const line of lines(0, 2)) await carryOut(line, hands);
  await expect
    .poll(async () => textsOf(await storedEvents(app.address, job)))
    .toEqual(textsFor(0, 2));
  await pageKept(page);

  await app.off();
  for (const line of lines(2, 6)) await carryOut(line, hands);
  await page.getByText(notStored).waitFor({ timeout: 10_000 });
  // The browser says that it reached nobody; the page comes from the kiosk all the same.
  await page.reload().catch(() => undefined);
  await page.getByText(notStored).waitFor({ timeout: 20_000 });
  for (const line of lines(6, 9)) await carryOut(line, hands);
  expect(await loadEars(page)).toBe('loaded');

  await app.on();
  for (const line of lines(9, 11)) await carryOut(line, hands);
  await expect
    .poll(async () => textsOf(await storedEvents(app.address, job)), { timeout: 20_000 })
    .toEqual(textsFor(0, 11));
  await page.getByText(/not yet stored/).waitFor({ state: 'detached' });
  expect(complaints).toEqual([]);
});

test('a second kiosk takes a job over on purpose, and of two that worked on it neither loses anything', async () => {
  const address = await ownApp();
  const job = await jobIn(address, 'bay-1');
  const open = async () => {
    const page = await testPage();
    await page.goto(`${address}/bay/bay-1`);
    const hands = keyboard(page);
    await sayWho(hands);
    return { page, hands };
  };
  const stored = async () => textsOf(await storedEvents(address, job));
  const first = await open();
  await first.page.getByRole('region', { name: 'Last heard' }).waitFor();
  for (const line of lines(0, 2)) await carryOut(line, first.hands);
  await expect.poll(stored).toEqual(textsFor(0, 2));

  const second = await open();
  await second.page
    .getByRole('heading', { name: 'This job is in work at another kiosk' })
    .waitFor();
  expect(await wcagFailures(second.page)).toEqual([]);
  await second.hands.press('Take it over here');

  await first.page.context().setOffline(true);
  await first.hands.number('7.9');
  await first.page.getByText(/^1 not yet stored/).waitFor();
  await second.hands.number('8.4');
  await expect.poll(async () => (await stored()).at(-1)).toMatch(/^readingTaken .* 8\.4 L$/);
  await first.page.context().setOffline(false);

  await first.page.getByRole('heading', { name: 'This job went on at another place' }).waitFor();
  const mine = first.page.getByRole('region', { name: 'Mine, not stored: 1' });
  const theirs = first.page.getByRole('region', { name: 'Theirs, stored: 1' });
  expect(await mine.textContent()).toContain(': 7.9 L');
  expect(await theirs.textContent()).toContain(': 8.4 L');
  expect(await wcagFailures(first.page)).toEqual([]);
  await first.hands.press('Go on with theirs, note mine for the foreman');
  await expect.poll(async () => (await stored()).at(-1)).toBe('deviationNoted anotherWay');
  const note = (await storedEvents(address, job)).at(-1)?.happening;
  expect(note?.type === 'deviationNoted' && note.reason.text).toContain(': 7.9 L');

  await first.hands.press('Take it over here');
  await earsGivenUp(first.hands);
  await first.hands.press(/Cannot hear/);
  const saved = first.page.waitForEvent('download');
  await first.hands.press('Save as a file');
  const file = await (await saved).path();
  expect(readFileSync(file, 'utf8')).toContain('"value": 7.9');
});
