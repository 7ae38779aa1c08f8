import { describe, expect, it } from 'vitest';
import { implausible } from '@/lib/metrology';

describe('an implausible value', () => {
  it('is over three times or under a third of the target', () => {
    const wheelNut = { lower: 108, upper: 132, target: 120 };
    expect(implausible(1200, wheelNut)).toBe('farTooHigh');
    expect(implausible(361, wheelNut)).toBe('farTooHigh');
    expect(implausible(360, wheelNut)).toBeUndefined();
    expect(implausible(40, wheelNut)).toBeUndefined();
    expect(implausible(39, wheelNut)).toBe('farTooLow');
    expect(implausible(-120, wheelNut)).toBe('farTooLow');
  });

  it('is measured from the middle or the only limit where there is no target', () => {
    expect(implausible(91, { lower: 20, upper: 40 })).toBe('farTooHigh');
    expect(implausible(90, { lower: 20, upper: 40 })).toBeUndefined();
    expect(implausible(4, { lower: 12.4 })).toBe('farTooLow');
    expect(implausible(1.6, { upper: 0.5 })).toBe('farTooHigh');
  });

  it('knows windows below and around zero', () => {
    expect(implausible(-5, { lower: -40, upper: -30 })).toBe('farTooHigh');
    expect(implausible(-120, { lower: -40, upper: -30 })).toBe('farTooLow');
    expect(implausible(0, { lower: -1, upper: 1 })).toBeUndefined();
    expect(implausible(3.1, { lower: -1, upper: 1 })).toBe('farTooHigh');
  });

  it('is unknown where the sheet gives no figure, and always what is no number', () => {
    expect(implausible(120, undefined)).toBeUndefined();
    expect(implausible(Number.NaN, { lower: 1, upper: 2 })).toBe('farTooHigh');
    expect(implausible(Number.NEGATIVE_INFINITY, { lower: 1, upper: 2 })).toBe('farTooLow');
  });
});
