import { expect, test } from 'vitest';
import { checkPin, hashPin } from '@/lib/access';
import { afterFailure, countersOf, waitMs, type Counter } from '@/lib/access/throttle';
import { freshStore } from '../store/fresh-store';

const person: Counter = { name: 'person:ada', of: 'person' };
const failures = (n: number) => ({ failures: n, lastFailedMs: 0 });

test('three wrong PINs cost nothing, then each waits twice as long, up to five minutes', () => {
  const waits = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 1000].map(
    (n) => waitMs(person, failures(n), 0) / 1000,
  );
  expect(waits).toEqual([0, 0, 0, 5, 10, 20, 40, 80, 160, 300, 300, 300]);
});

test('a kiosk that many people use lets ten pass', () => {
  const kiosk: Counter = { name: 'kiosk:k', of: 'kiosk' };
  expect(waitMs(kiosk, failures(9), 0)).toBe(0);
  expect(waitMs(kiosk, failures(10), 0)).toBe(5000);
});

test('the wait runs down, and a clock set back does not lengthen it', () => {
  expect(waitMs(person, failures(3), 4_000)).toBe(1_000);
  expect(waitMs(person, failures(3), 5_000)).toBe(0);
  expect(waitMs(person, { failures: 3, lastFailedMs: 900_000 }, 0)).toBe(5_000);
});

test('a day without a wrong PIN is a new start', () => {
  expect(afterFailure(failures(8), 3_600_000)).toEqual({ failures: 9, lastFailedMs: 3_600_000 });
  expect(afterFailure(failures(8), 86_400_001)).toEqual({ failures: 1, lastFailedMs: 86_400_001 });
});

test('a kiosk that knows the person counts for itself, strange kiosks count together', () => {
  expect(countersOf('ada', 'k', true).map((counter) => counter.name)).toEqual([
    'kiosk:k',
    'person:ada@k',
  ]);
  expect(countersOf('ada', 'x', false).map((counter) => counter.name)).toEqual([
    'kiosk:x',
    'person:ada',
  ]);
});

const cheap = { logN: 4, r: 8, p: 1 };
const withPins = async () => {
  const { store } = await freshStore({
    ada: await hashPin('1234', cheap),
    finn: await hashPin('87654321', cheap),
  });
  return async (who: string, pin: string, device: string, atS: number): Promise<string> => {
    const checked = await checkPin(store, { person: who, pin, device }, atS * 1000);
    if (checked.ok) return checked.value.role;
    return checked.error.kind === 'wait' ? `wait ${checked.error.forMs / 1000}` : 'wrong';
  };
};

test('the right PIN names the person with their role', async () => {
  const at = await withPins();
  expect(await at('ada', '1234', 'k', 0)).toBe('mechanic');
  expect(await at('finn', '87654321', 'k', 0)).toBe('foreman');
});

test('after three wrong PINs even the right one has to wait, then it is let in and all is forgotten', async () => {
  const at = await withPins();
  for (const pin of ['0000', '0001', '0002']) expect(await at('ada', pin, 'k', 0)).toBe('wrong');
  expect(await at('ada', '1234', 'k', 1)).toBe('wait 4');
  expect(await at('ada', '1234', 'k', 2)).toBe('wait 3');
  expect(await at('ada', '1234', 'k', 5)).toBe('mechanic');
  for (const pin of ['0000', '0001', '0002']) expect(await at('ada', pin, 'k', 6)).toBe('wrong');
});

test('many guesses at the same moment do not get past the throttle', async () => {
  const at = await withPins();
  const pins = Array.from({ length: 20 }, (_, n) => `10${n.toString().padStart(2, '0')}`);
  const answers = await Promise.all(pins.map((pin) => at('ada', pin, 'k', 0)));
  expect(answers.filter((answer) => answer === 'wrong')).toHaveLength(3);
  expect(answers.filter((answer) => answer === 'wait 5')).toHaveLength(17);
});

test('guessing from ever new kiosks is slowed down, yet the person is let in at their own kiosk', async () => {
  const at = await withPins();
  expect(await at('ada', '1234', 'own', 0)).toBe('mechanic');
  for (const n of [1, 2, 3]) expect(await at('ada', '0000', `new-${n}`, 1)).toBe('wrong');
  expect(await at('ada', '0000', 'new-4', 1)).toBe('wait 5');
  expect(await at('ada', '1234', 'own', 1)).toBe('mechanic');
});

test('trying many people at one kiosk is slowed down by the kiosk', async () => {
  const at = await withPins();
  const people = Array.from({ length: 10 }, (_, n) => `nobody-${n}`);
  for (const [n, who] of people.entries()) {
    expect(await at(who, '0000', 'k', n * 600)).toMatch(/^wrong$/);
  }
  expect(await at('ada', '1234', 'k', 5400)).toBe('wait 5');
});
