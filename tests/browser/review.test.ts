import type { Page } from 'playwright-core';
import { expect, onTestFinished, test } from 'vitest';
import { demoPins } from '@/demo';
import { demoMonth } from '@/demo/month';
import { seedDemo } from '@/lib/cli/seed-demo';
import { startApp } from '@/lib/cli/start-app';
import { openStore } from '@/lib/store';
import { addClosedJobs } from '@/lib/store/closed-jobs';
import { databaseFile } from '@/lib/store/files';
import { testFolder, testPage } from './job-script/kiosk-browser';
import { signOnAt } from './job-script/session';
import { wcagFailures } from './job-script/wcag';

const days = 'from=2026-03-24&to=2026-03-30';

/** The demo shop after a week of closed jobs. */
const shopAfterAWeek = async (): Promise<string> => {
  const folder = testFolder();
  const store = await openStore(databaseFile(folder));
  if (!store.ok) throw new Error(store.error);
  const now = new Date();
  await seedDemo(store.value, now);
  const month = demoMonth({ seed: '1', until: '2026-03-31', days: 7 });
  const added = await addClosedJobs(store.value, month, now);
  await store.value.close();
  if (!added.ok) throw new Error(added.error);
  const app = await startApp(folder);
  onTestFinished(async () => {
    await app.stop();
  });
  return app.address;
};

const signOnAsForeman = async (page: Page, address: string): Promise<void> => {
  const { cookie } = await signOnAt(address, '/api/foreman', {
    person: 'mara-quill',
    pin: demoPins['mara-quill'],
  });
  await page.context().addCookies(
    cookie.split('; ').map((one) => {
      const [name = '', ...value] = one.split('=');
      return { name, value: value.join('='), url: address };
    }),
  );
};

const width = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth);

test('the review shows what there was to learn, to whom it may be shown, and takes a mark for the writer', async () => {
  const address = await shopAfterAWeek();
  const page = await testPage();
  const reviewOf = async (query: string): Promise<void> => {
    const response = await page.goto(`${address}/review?${query}`);
    expect(response?.status()).toBe(200);
  };
  // After its start the server takes the jobs into the review beside its other work.
  const beingTakenIn = page.getByText('Jobs are still being taken in');
  await expect
    .poll(
      async () => {
        await reviewOf(days);
        return beingTakenIn.count();
      },
      { timeout: 30_000, interval: 500 },
    )
    .toBe(0);
  for (const name of ['Deviations', 'Rework', 'Readings', 'Step times', 'Hearing', 'Holds'])
    await page.getByRole('heading', { name, exact: true, level: 2 }).waitFor();
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    expect(await wcagFailures(page)).toEqual([]);
  }
  const names = /Tom Ashby|Jo Fenn/;
  expect(await page.locator('main').innerText()).not.toMatch(names);
  expect(await page.locator('main').innerText()).toMatch(/Mechanic \d/);

  // What the chart draws is in its table, and adds up.
  const table = page.getByRole('table', { name: /^Deviations by kind: all/ });
  expect(await table.isVisible()).toBe(false);
  await page.getByText('Table: Deviations by kind').click();
  expect(await table.isVisible()).toBe(true);
  const counts = await table.locator('tbody td:nth-child(2)').allInnerTexts();
  const all = counts.reduce((sum, count) => sum + Number(count), 0);
  expect(all).toBeGreaterThan(3);
  await page.getByRole('heading', { name: new RegExp(`^${all} deviations, the newest`) }).waitFor();

  // A filter narrows all of it; sending the form needs no script.
  await page.getByLabel('Bay').selectOption({ label: 'Bay 1' });
  await page.getByRole('button', { name: 'Show' }).click();
  await page.waitForURL(/bay=bay-1/);
  const cards = page.locator('#deviations article');
  const bays = await cards.locator('header a').allTextContents();
  expect(bays.length).toBeGreaterThan(0);
  expect(bays.length).toBeLessThan(all);
  expect(bays.filter((text) => !text.endsWith(', Bay 1'))).toEqual([]);
  await reviewOf('from=2020-01-01&to=2020-01-02');
  await page.getByText('Nothing was other than the sheet has it.').waitFor();

  for (const screen of [1366, 1024]) {
    await page.setViewportSize({ width: screen, height: 768 });
    await reviewOf(days);
    expect(await width(page)).toBeLessThanOrEqual(screen);
  }

  // A point of the chart leads to the job as it stood then.
  const point = page.locator('#readings svg a').first();
  const to = await point.getAttribute('href');
  expect(to).toMatch(/^\/jobs\/[0-9a-f-]{36}\?at=\d+$/);
  await point.click();
  await page.waitForURL((url) => `${url.pathname}${url.search}` === to);

  await signOnAsForeman(page, address);
  await reviewOf(days);
  expect(await page.locator('main').innerText()).toMatch(names);
  const card = cards.first();
  await card.getByRole('button', { name: 'Change the sheet' }).click();
  await card.getByLabel('What should the sheet say instead?').fill('Name the longer bolt');
  await card.getByRole('button', { name: 'Mark the sheet' }).click();
  await card.getByText('Sheet marked').waitFor();
  expect(await card.innerText()).toContain('Name the longer bolt');
  const mark = page.getByRole('row').filter({ hasText: 'Name the longer bolt' });
  expect(await mark.innerText()).toMatch(/Mara Quill.*open/s);
}, 120_000);
