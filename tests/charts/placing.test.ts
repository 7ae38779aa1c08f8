import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countTicks, dayTicks, domainOf } from '@/components/charts/axis-ticks';
import { spreadLabels } from '@/components/charts/spread-labels';
import { wrapLabel } from '@/components/charts/wrap-label';

describe('labels beside their lines', () => {
  test('stay where they are wanted while they do not touch', () => {
    expect(spreadLabels([90, 10, 50], { gap: 14, from: 0, to: 100 })).toEqual([90, 10, 50]);
  });

  test('make room for each other, in their order', () => {
    expect(spreadLabels([50, 52, 51], { gap: 10, from: 0, to: 100 })).toEqual([50, 70, 60]);
  });

  test('are pushed back from the end', () => {
    expect(spreadLabels([98, 99], { gap: 10, from: 0, to: 100 })).toEqual([90, 100]);
  });

  test('never touch, keep their order, and stay inside where they all fit', () => {
    const place = fc.double({ min: 0, max: 200, noNaN: true });
    fc.assert(
      fc.property(fc.array(place, { minLength: 1, maxLength: 12 }), (wanted) => {
        const spread = spreadLabels(wanted, { gap: 15, from: 0, to: 200 });
        expect(spread).toHaveLength(wanted.length);
        const placed = [...spread].sort((a, b) => a - b);
        for (const [at, one] of placed.entries()) {
          expect(one).toBeGreaterThanOrEqual(-1e-9);
          expect(one).toBeLessThanOrEqual(200 + 1e-9);
          if (at > 0) expect(one - (placed[at - 1] ?? 0)).toBeGreaterThanOrEqual(15 - 1e-9);
        }
        for (const [a, one] of wanted.entries())
          for (const [b, other] of wanted.entries())
            if (one < other) expect(spread[a]).toBeLessThan(spread[b] ?? NaN);
      }),
    );
  });
});

describe('the label of a row', () => {
  test.each([
    ['Short', ['Short']],
    ['Take the front cover off', ['Take the', 'front cov…']],
    ['Uninterruptible', ['Uninterrup', 'tible']],
    ['', []],
  ])('%s', (text, lines) => {
    expect(wrapLabel(text, { width: 10, lines: 2 })).toEqual(lines);
  });

  test('keeps its words in order, in lines that are not too wide, and says where it was cut', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 60 }), fc.integer({ min: 4, max: 20 }), (text, width) => {
        const lines = wrapLabel(text, { width, lines: 3 });
        expect(lines.length).toBeLessThanOrEqual(3);
        for (const one of lines) expect(one.length).toBeLessThanOrEqual(width);
        const whole = text.replace(/\s/g, '');
        const kept = lines.join('').replace(/\s/g, '');
        if (kept !== whole) {
          expect(kept.endsWith('…')).toBe(true);
          expect(whole.startsWith(kept.slice(0, -1))).toBe(true);
        }
      }),
    );
  });
});

describe('an axis', () => {
  test('holds everything that is to be seen, with room around it', () => {
    expect(domainOf([10, 30])).toEqual([9, 31]);
    const [low, high] = domainOf([22, 22, 22]);
    expect(low).toBeLessThan(22);
    expect(high).toBeGreaterThan(22);
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 1 }),
        (seen) => {
          const [from, to] = domainOf(seen);
          expect(from).toBeLessThan(Math.min(...seen));
          expect(to).toBeGreaterThan(Math.max(...seen));
        },
      ),
    );
  });

  test('counts in whole numbers', () => {
    expect(countTicks(3, 5)).toEqual([0, 1, 2, 3]);
    expect(countTicks(0, 5)).toEqual([0, 1]);
    expect(countTicks(230, 5)).toEqual([0, 50, 100, 150, 200]);
  });

  test('names each day once, and not so often that the names run together', () => {
    const days = ['1 Nov', '1 Nov', '2 Nov', '3 Nov', '3 Nov', '3 Nov', '4 Nov'];
    expect(dayTicks(days, 1).map(({ at }) => at)).toEqual([0, 2, 3, 6]);
    expect(dayTicks(days, 3)).toEqual([
      { at: 0, day: '1 Nov' },
      { at: 3, day: '3 Nov' },
      { at: 6, day: '4 Nov' },
    ]);
  });
});
