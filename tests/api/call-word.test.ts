import { expect, test } from 'vitest';
import { readBayView } from '@/lib/server/bays';
import { writeCallWord } from '@/lib/server/call-word';
import { readShop } from '@/lib/store';
import { errorOf, freshServer, type Kiosk } from './kiosk';

const set = (kiosk: Kiosk, callWord: unknown, bay = 'bay-1') =>
  kiosk.send(writeCallWord, { bay }, { method: 'PUT', body: { callWord } });

test('a foreman sets by which word one bay is called, and takes it away again', async () => {
  const { kiosk, server } = await freshServer();
  await kiosk.signOn('finn', '5678');
  expect((await set(kiosk, 'jupiter')).body).toEqual({
    bay: { id: 'bay-1', name: 'Bay 1', callWord: 'jupiter' },
  });
  expect((await readShop(server.store))?.bays).toEqual([
    { id: 'bay-1', name: 'Bay 1', callWord: 'jupiter' },
    { id: 'bay-2', name: 'Bay 2' },
  ]);
  const view = await kiosk.send(readBayView, { bay: 'bay-1' }, { method: 'GET' });
  expect(view.body).toMatchObject({ bay: { callWord: 'jupiter' } });
  expect((await set(kiosk, null)).body).toEqual({ bay: { id: 'bay-1', name: 'Bay 1' } });
});

test('a mechanic does not, nor does nobody, nor another site', async () => {
  const { kiosk, server } = await freshServer();
  expect(errorOf(await set(kiosk, 'jupiter'))).toMatchObject({ status: 401 });
  await kiosk.signOn('ada', '1234');
  expect(errorOf(await set(kiosk, 'jupiter'))).toMatchObject({ status: 403, code: 'notYourRole' });
  await kiosk.signOn('finn', '5678');
  const elsewhere = await kiosk.send(
    writeCallWord,
    { bay: 'bay-1' },
    { method: 'PUT', body: { callWord: 'jupiter' }, headers: { origin: 'http://elsewhere.test' } },
  );
  expect(errorOf(elsewhere)).toMatchObject({ status: 403, code: 'crossSite' });
  expect((await readShop(server.store))?.bays[0]).toEqual({ id: 'bay-1', name: 'Bay 1' });
});

test('words that are none of ours, and bays that there are not, are refused', async () => {
  const { kiosk } = await freshServer();
  await kiosk.signOn('finn', '5678');
  expect(errorOf(await set(kiosk, 'next'))).toMatchObject({ code: 'invalid' });
  expect(errorOf(await set(kiosk, 'jupiter', 'bay-9'))).toMatchObject({ code: 'unknownBay' });
});
