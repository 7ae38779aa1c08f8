import { expect, test } from 'vitest';
import { writeShopSettings } from '@/lib/server/shop-settings';
import { readShop } from '@/lib/store';
import { errorOf, freshServer, type Kiosk } from './kiosk';

const change = (kiosk: Kiosk, body: unknown) =>
  kiosk.send(writeShopSettings, undefined, { method: 'PUT', body });

test('a foreman changes how the shop works; what is not named stays', async () => {
  const { kiosk, server } = await freshServer();
  expect((await readShop(server.store))?.settings).toBeUndefined();
  await kiosk.signOn('finn', '5678');
  expect((await change(kiosk, { showGeneralFigures: true })).body).toEqual({
    settings: { showGeneralFigures: true },
  });
  await change(kiosk, { toolsMarkedInSheetUnit: true });
  expect((await readShop(server.store))?.settings).toEqual({
    showGeneralFigures: true,
    toolsMarkedInSheetUnit: true,
  });
  await change(kiosk, { showGeneralFigures: false });
  expect((await readShop(server.store))?.settings?.showGeneralFigures).toBe(false);
});

test('a mechanic does not, nor does nobody', async () => {
  const { kiosk, server } = await freshServer();
  expect(errorOf(await change(kiosk, { showGeneralFigures: true }))).toMatchObject({ status: 401 });
  await kiosk.signOn('ada', '1234');
  expect(errorOf(await change(kiosk, { showGeneralFigures: true }))).toMatchObject({
    status: 403,
    code: 'notForeman',
  });
  expect((await readShop(server.store))?.settings).toBeUndefined();
});

test('settings that there are not are refused', async () => {
  const { kiosk } = await freshServer();
  await kiosk.signOn('finn', '5678');
  expect(errorOf(await change(kiosk, { everything: true }))).toMatchObject({ code: 'invalid' });
  expect(errorOf(await change(kiosk, { showGeneralFigures: 'yes' }))).toMatchObject({
    code: 'invalid',
  });
});
