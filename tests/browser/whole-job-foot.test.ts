import { expect, test } from 'vitest';
import { pressFoot } from './job-script/foot';
import { ownApp, testPage } from './job-script/kiosk-browser';
import { keyboard } from './job-script/keyboard';
import { signOn } from './job-script/people';
import { jobIn, storedEvents, textsOf } from './job-script/record';

test('the foot switch goes on, says yes and says no, and goes back when it is held down', async () => {
  const address = await ownApp();
  const job = await jobIn(address, 'bay-1');
  const page = await testPage();
  await page.goto(`${address}/bay/bay-1`);
  const hands = keyboard(page);
  await signOn(hands);
  const expected: string[] = [];
  const stores = async (...texts: readonly string[]): Promise<void> => {
    expected.push(...texts);
    await expect
      .poll(async () => textsOf(await storedEvents(address, job)), { timeout: 10_000 })
      .toEqual(expected);
  };
  const asked = page.locator('[data-value="asked"]');

  await hands.number('31');
  await stores('readingTaken engine-temperature 31 Cel');
  await pressFoot(page, 'short');
  await stores('stepDone park', 'stepBegun drain-coolant');

  // Out of spec: asked back; a long press says no, a short one yes.
  await hands.number('5');
  await asked.waitFor();
  await pressFoot(page, 'long');
  await asked.waitFor({ state: 'detached' });
  await stores();
  await hands.number('5');
  await asked.waitFor();
  await pressFoot(page, 'short');
  await stores('readingTaken coolant-drained 5 L');

  await pressFoot(page, 'long');
  await stores('stepBegun park');

  const byFoot = (await storedEvents(address, job)).filter(({ input }) => input.by === 'foot');
  expect(textsOf(byFoot)).toEqual([
    'stepDone park',
    'stepBegun drain-coolant',
    'readingTaken coolant-drained 5 L',
    'stepBegun park',
  ]);
});
