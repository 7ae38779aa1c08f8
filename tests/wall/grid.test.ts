import { describe, expect, test } from 'vitest';
import { gridFor, shortBayNames, type BayCard } from '@/lib/wall';

describe('the grid of the wall', () => {
  test.each(Array.from({ length: 60 }, (_, n) => n + 1))('has a place for each of %i bays', (n) => {
    const { columns, rows } = gridFor(n);
    expect(columns * rows).toBeGreaterThanOrEqual(n);
    // No row stands empty.
    expect(columns * (rows - 1)).toBeLessThan(n);
  });

  test.each([
    [1, 1, 1, 'all'],
    [3, 3, 1, 'all'],
    [4, 2, 2, 'all'],
    [12, 4, 3, 'some'],
    [24, 6, 4, 'short'],
    [60, 10, 6, 'sign'],
  ] as const)('shows %i bays in %i columns and %i rows', (bays, columns, rows, detail) => {
    expect(gridFor(bays)).toEqual({ columns, rows, detail });
  });

  test('shows less of each the more there are', () => {
    const order = ['all', 'some', 'short', 'sign'];
    const details = Array.from({ length: 60 }, (_, n) => order.indexOf(gridFor(n + 1).detail));
    expect(details.filter((detail, n) => detail < (details[n - 1] ?? 0))).toEqual([]);
  });
});

const named = (...names: readonly string[]): readonly BayCard[] =>
  names.map((name, n) => ({ bay: { id: `b${n}`, name }, kiosk: {}, wants: [] }));

describe('the short name of a bay', () => {
  test('is its number where all are called alike', () => {
    expect(shortBayNames(named('Bay 1', 'Bay 12'))).toEqual({ b0: '1', b1: '12' });
  });

  test('is its whole name where they are not', () => {
    expect(shortBayNames(named('Bay 1', 'Pit'))).toEqual({ b0: 'Bay 1', b1: 'Pit' });
    expect(shortBayNames(named('Bay 1', 'Pit 1'))).toEqual({ b0: 'Bay 1', b1: 'Pit 1' });
  });
});
