import type { Locator, Page } from 'playwright-core';
import { acts } from '@/lib/kiosk';
import type { Hands } from './hands';

/** Further than any screen has targets. */
const mostTabs = 120;

const keyOf = (name: string): string => {
  const key = acts.find((act) => act.name === name)?.keys[0];
  if (key === undefined) throw new Error(`the act ${name} has no key`);
  return key;
};

/** A keyboard: keys of acts, Tab and Enter for all else. */
export const keyboard = (page: Page): Hands => {
  const tabTo = async (target: Locator, what: string): Promise<void> => {
    await target.waitFor();
    for (let tabs = 0; tabs < mostTabs; tabs += 1) {
      await page.keyboard.press('Tab');
      if (await target.evaluate((element) => element === document.activeElement)) return;
    }
    throw new Error(`the keyboard does not get to ${what}`);
  };
  const press = async (name: string | RegExp, nth = 0): Promise<void> => {
    await tabTo(page.getByRole('button', { name, exact: true }).nth(nth), String(name));
    await page.keyboard.press('Enter');
  };
  return {
    page,
    press,
    act: async ({ keys: [key = ''] }) => {
      await page.keyboard.press(key);
    },
    number: async (text) => {
      // The first digit opens the pad, which takes the rest once it is there.
      await page.keyboard.press(text.slice(0, 1));
      await page.getByRole('button', { name: 'Take this value' }).waitFor();
      for (const digit of text.slice(1)) await page.keyboard.press(digit);
      await page.keyboard.press('Enter');
    },
    pin: async (text) => {
      await page.getByRole('button', { name: 'Rub out the last digit' }).waitFor();
      // In a field of text, digits would be part of the text.
      if (await page.evaluate(() => document.activeElement instanceof HTMLTextAreaElement))
        await page.keyboard.press('Tab');
      for (const digit of text) await page.keyboard.press(digit);
    },
    write: async (label, text) => {
      await tabTo(page.getByLabel(label, { exact: true }), label);
      await page.keyboard.type(text);
    },
    ledger: async () => {
      await page.keyboard.press(keyOf('showLedger'));
    },
    deviation: async () => {
      await page.keyboard.press(keyOf('deviation'));
    },
  };
};
