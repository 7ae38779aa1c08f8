import type { Page } from 'playwright-core';
import { usualSettings } from '@/components/kiosk/kiosk-settings';
import { footLongMs } from '@/components/kiosk/use-keys';

/** The foot switch as the kiosk is set up for it when it is new: it sends a key that no keyboard of an office has. */
export const pressFoot = async (page: Page, how: 'short' | 'long'): Promise<void> => {
  const session = await page.context().newCDPSession(page);
  const key = { key: usualSettings.footKey, code: usualSettings.footKey };
  await session.send('Input.dispatchKeyEvent', { type: 'rawKeyDown', ...key });
  await page.waitForTimeout(how === 'long' ? footLongMs + 200 : 100);
  await session.send('Input.dispatchKeyEvent', { type: 'keyUp', ...key });
  await session.detach();
};
