import fc from 'fast-check';
import { expect, test } from 'vitest';
import { proportion } from '@/lib/statistics';

// Newcombe, Stat. Med. 17 (1998) 857–872, table I, method 3 (score without continuity correction), 95 %; from memory.
test.each([
  [81, 263, 0.2553, 0.3662],
  [15, 148, 0.0624, 0.1605],
  [0, 20, 0, 0.1611],
  [1, 29, 0.0061, 0.1718],
])('%i of %i: Newcombe’s score interval', (some, all, from, to) => {
  const found = proportion(some, all);
  if (!found.ok) throw new Error(found.error.message);
  expect(found.value.from).toBeCloseTo(from, 4);
  expect(found.value.to).toBeCloseTo(to, 4);
});

// What Wilson (1927) asks of the ends p: the share lies z·√(p(1 − p)/n) away from each. z = 1.959964 (ISO 2854, table).
test('each end is just as far from the share as the score test allows', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 500 }), fc.integer({ min: 2, max: 1000 }), (a, b) => {
      const [some, all] = [Math.min(a, b - 1), b];
      const found = proportion(some, all);
      if (!found.ok) throw new Error(found.error.message);
      const { share, from, to } = found.value;
      for (const end of [from, to])
        expect(Math.abs(share - end)).toBeCloseTo(1.959964 * Math.sqrt((end * (1 - end)) / all), 6);
    }),
  );
});

test('nothing of nothing, and more than all, have no share', () => {
  expect(proportion(0, 0).ok).toBe(false);
  expect(proportion(3, 2).ok).toBe(false);
  expect(proportion(1.5, 2).ok).toBe(false);
  expect(proportion(1, 2, 1).ok).toBe(false);
});
