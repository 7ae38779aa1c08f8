import type { Page } from 'playwright-core';
import type { Hands } from './hands';

/** A finger: nothing but taps. The page must have been opened with a touch screen. */
export const touch = (page: Page): Hands => {
  const press = async (name: string | RegExp, nth = 0): Promise<void> => {
    await page.getByRole('button', { name, exact: true }).nth(nth).tap();
  };
  const digits = async (text: string): Promise<void> => {
    for (const digit of text) await press(digit === '.' ? 'point' : digit);
  };
  const open = async (): Promise<void> => {
    await press('All phrases and keys');
  };
  return {
    page,
    press,
    act: async ({ name, label }) => {
      // What has no button beside the step has one in the list of everything that can be done.
      if (['leftOver', 'leaveOut'].includes(name)) {
        await open();
        await press(new RegExp(`^${label}\\b`));
      } else if (name === 'close') {
        await press(/loose ends?$/);
        await press(label);
      } else await press(name === 'yes' ? /^Yes/ : label);
    },
    number: async (text) => {
      await press('Type a value');
      await digits(text);
      await press('Take this value');
    },
    pin: digits,
    write: async (label, text) => {
      await page.getByLabel(label, { exact: true }).waitFor();
      await press('Letters');
      for (const letter of text) await press(letter === ' ' ? 'space' : letter);
      await press('Letters');
    },
    ledger: () => press(/loose ends?$/),
    deviation: async () => {
      await press('Note a deviation');
      await press(/^Done another way/);
    },
  };
};
