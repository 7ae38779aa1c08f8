import { describe, expect, it } from 'vitest';
import { judge, provenInterval } from '@/lib/metrology';

const wheelNut = { lower: 108, upper: 132 };

describe('a verdict', () => {
  it.each([
    [108, 'inSpec'],
    [132, 'inSpec'],
    [107.9, 'outOfSpec'],
    [132.1, 'outOfSpec'],
    [108 - 1e-10, 'inSpec'],
  ] as const)('of %d by the tolerance as it is: %s', (value, verdict) => {
    expect(judge(value, wheelNut, 4.8, 'simple')).toBe(verdict);
    expect(judge(value, wheelNut, undefined, 'simple')).toBe(verdict);
  });

  it.each([
    [112.8, 'inSpec'],
    [127.2, 'inSpec'],
    [112.7, 'notProvable'],
    [103.2, 'notProvable'],
    [136.8, 'notProvable'],
    [103.1, 'outOfSpec'],
    [136.9, 'outOfSpec'],
  ] as const)('of %d that must be proven with ±4.8: %s', (value, verdict) => {
    expect(judge(value, wheelNut, 4.8, 'mustProve')).toBe(verdict);
  });

  it('is proven exactly between the limits drawn in by the uncertainty', () => {
    expect(provenInterval(wheelNut, 4.8)).toEqual({ lower: 112.8, upper: 127.2 });
    expect(provenInterval({ lower: 108 }, 4.8)).toEqual({ lower: 112.8 });
    expect(provenInterval(wheelNut, 12.1)).toBeUndefined();
    expect(provenInterval(wheelNut, Number.NaN)).toBeUndefined();
  });

  it('proves nothing without a known uncertainty', () => {
    expect(judge(120, wheelNut, undefined, 'mustProve')).toBe('notProvable');
    expect(judge(120, wheelNut, -1, 'mustProve')).toBe('notProvable');
    expect(judge(120, wheelNut, Number.NaN, 'mustProve')).toBe('notProvable');
    expect(judge(90, wheelNut, undefined, 'mustProve')).toBe('outOfSpec');
  });

  it('is never in spec without a figure or a number', () => {
    expect(judge(120, undefined, 1, 'simple')).toBe('noFigure');
    expect(judge(Number.NaN, wheelNut, 1, 'simple')).toBe('outOfSpec');
    expect(judge(Number.POSITIVE_INFINITY, { lower: 1 }, 1, 'mustProve')).toBe('outOfSpec');
  });
});
