import type { Page } from 'playwright-core';
import { describe, expect, inject, onTestFinished, test } from 'vitest';
import {
  arcMinutesOf,
  capitalRatio,
  pixelPitchMm,
  wallArcMinutes,
  wallDistanceMm,
  wallScreen,
} from '@/components/legibility';
import { demoPins } from '@/demo';
import { setUpWallShop, nextEvent, type BenchJob } from '@/lib/cli/bench-wall-shop';
import { startApp } from '@/lib/cli/start-app';
import { openStore } from '@/lib/store';
import { databaseFile } from '@/lib/store/files';
import type { Happening } from '@/lib/job';
import { testFolder, testPage } from './job-script/kiosk-browser';
import { jobIn, storedEvents } from './job-script/record';
import { signOnAt } from './job-script/session';
import { wcagFailures } from './job-script/wcag';

/** What the wall marks as to be read from afar, how high its capitals are seen, and whether it is all there. */
const farTexts = async (page: Page, widthPx: number) => {
  const heightPx = (widthPx * 9) / 16;
  const pitchMm = pixelPitchMm({ diagonalIn: wallScreen.diagonalIn, widthPx, heightPx });
  const all = await page.locator('[data-far]:visible').evaluateAll((elements) =>
    elements.map((element) => ({
      text: element.textContent,
      fontSizePx: Number.parseFloat(getComputedStyle(element).fontSize),
      family: getComputedStyle(element).fontFamily,
      cut: element.scrollWidth > element.clientWidth + 1 && element.clientWidth > 0,
    })),
  );
  return all.map(({ fontSizePx, ...rest }) => ({
    ...rest,
    arcMinutes: arcMinutesOf(fontSizePx * capitalRatio * pitchMm, wallDistanceMm),
  }));
};

/** What sticks out of its tile or of the screen. */
const stickingOut = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const out: string[] = [];
    const { scrollWidth, scrollHeight } = document.documentElement;
    if (scrollWidth > innerWidth || scrollHeight > innerHeight) out.push('the page scrolls');
    for (const tile of document.querySelectorAll('[data-bay]')) {
      const box = tile.getBoundingClientRect();
      if (box.bottom > innerHeight || box.right > innerWidth) out.push(`tile ${tile.textContent}`);
      for (const far of tile.querySelectorAll('[data-far]')) {
        const inner = far.getBoundingClientRect();
        if (inner.bottom > box.bottom + 1 || inner.right > box.right + 1)
          out.push(`${far.textContent} of ${tile.textContent}`);
      }
    }
    return out;
  });

const shopOf = async (bays: number) => {
  const folder = testFolder();
  const store = await openStore(databaseFile(folder));
  if (!store.ok) throw new Error(store.error);
  const jobs = await setUpWallShop(store.value, bays, new Date());
  await store.value.close();
  const app = await startApp(folder);
  onTestFinished(async () => {
    await app.kill();
  });
  return { app, jobs };
};

const post = async (address: string, job: BenchJob, happening: Happening): Promise<void> => {
  const event = nextEvent(job, happening, Date.now());
  const response = await fetch(`${address}/api/jobs/${event.job}/events`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', origin: address, cookie: job.cookie },
    body: JSON.stringify({ events: [event] }),
  });
  expect(response.status).toBe(200);
};

describe.each([12, 60])('the wall of %i bays', (bays) => {
  test('is all on one screen, and what matters is read from 6 m at 55 inches', async () => {
    const { app, jobs } = await shopOf(bays);
    const page = await testPage();
    for (const [width, height] of [
      [1920, 1080],
      [3840, 2160],
    ] as const) {
      await page.setViewportSize({ width, height });
      await page.goto(`${app.address}/wall`);
      await page.locator(`[data-bay="bay-${bays}"]`).waitFor();
      expect(await page.locator('[data-bay]').count()).toBe(bays);
      const far = await farTexts(page, width);
      expect(far.length).toBeGreaterThanOrEqual(bays);
      expect(far.filter(({ arcMinutes }) => arcMinutes < wallArcMinutes)).toEqual([]);
      expect(far.filter(({ cut }) => cut)).toEqual([]);
      expect(far.every(({ family }) => /^"?Atkinson Hyperlegible/.test(family))).toBe(true);
      expect(await stickingOut(page)).toEqual([]);
    }
    if (bays !== 60) return;
    await page.setViewportSize({ width: 1920, height: 1080 });
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await wcagFailures(page)).toEqual([]);
    }
    const other = await testPage();
    await other.goto(`${app.address}/wall`);
    const [job] = jobs;
    if (job === undefined) throw new Error('no job');
    await post(app.address, job, { type: 'foremanCalled' });
    for (const wall of [page, other])
      await wall.locator('[data-bay="bay-1"][data-look="wanting"]').waitFor({ timeout: 5_000 });
    await app.kill();
    await page.getByRole('alert').filter({ hasText: 'No news' }).waitFor({ timeout: 30_000 });
    expect(await page.locator('[data-age]').textContent()).toMatch(/^Data \d+ s old$/);
    expect(await page.locator('[data-bay]').count()).toBe(60);
  });
});

test('a foreman answers, decides, holds and gives a job away from a phone, and the wall says so', async () => {
  const address = inject('address');
  const job = await jobIn(address, 'bay-2');
  const { device, cookie } = await signOnAt(address, '/api/session', {
    person: 'jo-fenn',
    pin: demoPins['jo-fenn'],
    bay: 'bay-2',
  });
  const before = await storedEvents(address, job);
  const events = (
    [
      { type: 'foremanCalled' },
      {
        type: 'deviationNoted',
        kind: 'anotherWay',
        step: 'wheel-off',
        reason: { text: 'by hand' },
      },
    ] satisfies Happening[]
  ).map((happening, at) => ({
    format: 1,
    id: crypto.randomUUID(),
    job,
    seq: before.length + 2 + at,
    at: new Date().toISOString(),
    actor: 'jo-fenn',
    role: 'mechanic',
    device,
    input: { by: 'touch' },
    happening,
  }));
  const [step] = (
    (await (await fetch(`${address}/api/jobs/${job}`)).json()) as {
      revision: { steps: { id: string }[] };
    }
  ).revision.steps;
  const sent = await fetch(`${address}/api/jobs/${job}/events`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', origin: address, cookie },
    body: JSON.stringify({
      events: events.map((one) =>
        'step' in one.happening ? { ...one, happening: { ...one.happening, step: step?.id } } : one,
      ),
    }),
  });
  expect(sent.status).toBe(200);

  const wall = await testPage();
  await wall.goto(`${address}/wall`);
  await wall.locator('[data-want="bay-2"]').filter({ hasText: 'Foreman called' }).waitFor();

  const phone = await testPage({ viewport: { width: 390, height: 844 }, hasTouch: true });
  await phone.goto(`${address}/foreman`);
  const tap = (name: string | RegExp): Promise<void> =>
    phone.getByRole('button', { name }).first().tap();
  await tap(/^Mara Quill/);
  for (const digit of '0000') await phone.getByRole('button', { name: digit, exact: true }).tap();
  await tap('Sign on');
  await phone.getByRole('alert').filter({ hasText: 'not the PIN' }).waitFor();
  for (const digit of demoPins['mara-quill'] ?? '')
    await phone.getByRole('button', { name: digit, exact: true }).tap();
  await tap('Sign on');
  await phone.getByRole('button', { name: /^Bay 2/ }).waitFor();
  const width = (): Promise<number> => phone.evaluate(() => document.documentElement.scrollWidth);
  expect(await width()).toBeLessThanOrEqual(390);
  await tap(/^Bay 2/);
  await phone.getByRole('button', { name: 'Answer the call' }).waitFor();
  expect(await wcagFailures(phone)).toEqual([]);
  expect(await width()).toBeLessThanOrEqual(390);
  await tap('Answer the call');
  await wall.locator('[data-bay="bay-2"]').getByText('answered by Mara Quill').waitFor();

  await tap('Accept, re-check due');
  await phone.getByLabel('In your own words').fill('seen it, in order');
  await phone
    .getByRole('region', { name: /^Accept, re-check due/ })
    .getByRole('button', { name: 'Accept, re-check due' })
    .tap();
  await phone.getByRole('region', { name: /^Accept, re-check due/ }).waitFor({ state: 'detached' });
  await tap('Hold the job');
  await tap('Waiting for parts');
  await phone
    .getByRole('region', { name: /^Hold the job/ })
    .getByRole('button', { name: 'Hold the job' })
    .tap();
  await wall.locator('[data-bay="bay-2"][data-look="held"]').waitFor();
  await tap('Lift the hold');
  await phone.getByRole('button', { name: 'Hold the job' }).waitFor();
  await phone.getByLabel('To mechanic').selectOption('tom-ashby');
  await tap('Move the job');
  await tap('End of shift');
  await phone
    .getByRole('region', { name: /^Move the job: why/ })
    .getByRole('button', { name: 'Move the job' })
    .tap();
  await wall.locator('[data-bay="bay-2"]').getByText('Tom Ashby').waitFor();

  const stored = (await storedEvents(address, job)).slice(before.length + 2);
  expect(stored.map(({ happening, actor, role }) => [happening.type, actor, role])).toEqual([
    ['foremanAnswered', 'mara-quill', 'foreman'],
    ['deviationDecided', 'mara-quill', 'foreman'],
    ['jobHeld', 'mara-quill', 'foreman'],
    ['jobResumed', 'mara-quill', 'foreman'],
    ['jobReassigned', 'mara-quill', 'foreman'],
  ]);
  expect(stored[1]?.happening).toMatchObject({
    decision: 'acceptedRecheckDue',
    reason: { text: 'seen it, in order' },
  });
});
