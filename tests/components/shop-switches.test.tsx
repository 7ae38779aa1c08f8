// @vitest-environment jsdom
import { describe, expect, test, vi } from 'vitest';
import { ShopSwitches } from '@/components/kiosk/shop-switches';
import { err, ok, type Result } from '@/lib/result';
import type { ShopSettings } from '@/lib/shop';
import { press, render, screen } from './dom';

const show = (settings: ShopSettings, answer: Result<void, string> = ok(undefined)) => {
  const keepShopSettings = vi.fn((_: ShopSettings) => Promise.resolve(answer));
  const onKept = vi.fn();
  render(<ShopSwitches settings={settings} link={{ keepShopSettings }} onKept={onKept} />);
  return { keepShopSettings, onKept };
};
const general = /Show general figures/;
const isOn = (on: boolean): Promise<HTMLElement> =>
  screen.findByRole('button', { name: general, pressed: on });

describe('the switches of the shop', () => {
  test('are off unless the shop has said otherwise', () => {
    show({});
    const on = screen.queryAllByRole('button', { pressed: true });
    expect(on.map(({ textContent }) => textContent)).toEqual(['30 days']);
  });

  test('say how long the sound of spoken notes is kept', async () => {
    const { keepShopSettings } = show({ noteSoundDays: 14 });
    expect(screen.getByRole('button', { name: '14 days', pressed: true })).toBeTruthy();
    press('Not kept');
    await screen.findByRole('button', { name: 'Not kept', pressed: true });
    expect(keepShopSettings).toHaveBeenCalledWith({ noteSoundDays: 0 });
  });

  test('are kept at once, one at a time', async () => {
    const { keepShopSettings, onKept } = show({ toolsMarkedInSheetUnit: true });
    press(general);
    await isOn(true);
    expect(keepShopSettings).toHaveBeenCalledWith({ showGeneralFigures: true });
    expect(onKept).toHaveBeenCalledOnce();
    press(general);
    await isOn(false);
    expect(keepShopSettings).toHaveBeenLastCalledWith({ showGeneralFigures: false });
  });

  test('stay as they were where the server refuses, and say so', async () => {
    const { onKept } = show({}, err('The server cannot be reached.'));
    press(general);
    expect(await screen.findByText('The server cannot be reached.')).toBeTruthy();
    await isOn(false);
    expect(onKept).not.toHaveBeenCalled();
  });
});
