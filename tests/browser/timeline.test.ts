import type { Page } from 'playwright-core';
import { expect, inject, test } from 'vitest';
import { demoPins, demoShop } from '@/demo';
import { demoMonth } from '@/demo/month';
import { openStore } from '@/lib/store';
import { addClosedJobs } from '@/lib/store/closed-jobs';
import { databaseFile } from '@/lib/store/files';
import { testPage } from './job-script/kiosk-browser';
import { signOnAt } from './job-script/session';
import { wcagFailures } from './job-script/wcag';

/** A closed job of the invented past in the shared app: its id, and how many events it has. */
const pastJob = async (): Promise<{ readonly id: string; readonly events: number }> => {
  const [events] = demoMonth({ seed: 'timeline', until: '2026-03-31', days: 2 });
  const store = await openStore(databaseFile(inject('dataFolder')));
  if (!store.ok || events?.[0] === undefined) throw new Error('no job');
  const added = await addClosedJobs(store.value, [events], new Date());
  await store.value.close();
  expect(added.ok).toBe(true);
  return { id: events[0].job, events: events.length };
};

const at = async (page: Page, seq: number, of: number): Promise<void> => {
  await page.getByRole('heading', { name: `As it stood after event ${seq} of ${of}` }).waitFor();
  await page.locator(`[data-moment="${seq}"]`).waitFor();
};

test('a job is gone through event by event, by keys and by links, and its address keeps the moment', async () => {
  const address = inject('address');
  const { id, events } = await pastJob();
  const page = await testPage();
  await page.goto(`${address}/jobs/${id}`);
  await at(page, events, events);
  expect(await page.getByText('Record unbroken').count()).toBe(1);
  const text = await page.locator('body').innerText();
  expect(text).toContain('Mechanic 1');
  for (const { id: person, name } of demoShop('2026-03-31').people) {
    expect(text).not.toContain(name);
    expect(await page.content()).not.toContain(person);
  }

  await page.goto(`${address}/jobs/${id}?at=5`);
  await at(page, 5, events);
  await page.getByRole('slider', { name: 'Moment in the job' }).focus();
  await page.keyboard.press('ArrowRight');
  await at(page, 6, events);
  await page.waitForURL(/at=6$/);
  await page.getByRole('link', { name: 'Event before' }).click();
  await at(page, 5, events);
  await page.waitForURL(/at=5$/);
  await page.getByRole('checkbox', { name: 'Readings and checks' }).check();
  await page.getByRole('button', { name: 'List these' }).click();
  await page.waitForURL(/kind=readings/);
  const listed = page.locator('[data-seq]');
  expect(await listed.count()).toBeGreaterThan(3);
  expect(await page.getByText('Step begun', { exact: true }).count()).toBe(0);
  const second = Number(await listed.nth(1).getAttribute('data-seq'));
  await listed.nth(1).getByRole('link').click();
  await at(page, second, events);
  expect(await listed.nth(1).getAttribute('data-now')).toBe('true');

  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    expect(await wcagFailures(page)).toEqual([]);
  }
  await page.setViewportSize({ width: 390, height: 844 });
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
}, 60_000);

test('without scripts the same page lists and shows a moment; a foreman sees names', async () => {
  const address = inject('address');
  const { id, events } = await pastJob();
  const page = await testPage({ javaScriptEnabled: false });
  await page.goto(`${address}/jobs/${id}?at=4&kind=steps`);
  await at(page, 4, events);
  await page.getByRole('link', { name: 'Event after' }).click();
  await at(page, 5, events);
  await page.getByRole('button', { name: 'Show this moment' }).click();
  await page.waitForURL(/kind=steps&at=5$/);

  const { cookie } = await signOnAt(address, '/api/foreman', {
    person: 'mara-quill',
    pin: demoPins['mara-quill'],
  });
  const answered = await fetch(`${address}/jobs/${id}`, { headers: { cookie } });
  const html = await answered.text();
  expect(html).not.toContain('Mechanic 1');
  expect(demoShop('2026-03-31').people.some(({ name }) => html.includes(name))).toBe(true);
}, 60_000);
