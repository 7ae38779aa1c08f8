import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkSpecification, type Specification } from '@/lib/fastening';

const codes = (spec: Specification) => checkSpecification(spec).map(({ code }) => code);

const percent = (plus: number, minus = plus) => ({ in: 'percent', plus, minus }) as const;

describe('a specification', () => {
  it.each<[string, Specification]>([
    ['± percent', { kind: 'target', unit: 'N.m', target: 120, tolerance: percent(10) }],
    [
      '+ and − in its unit',
      { kind: 'target', unit: 'N.m', target: 9, tolerance: { in: 'unit', plus: 1, minus: 0 } },
    ],
    ['from – to', { kind: 'range', unit: '[lbf_av].[ft_i]', lower: 80, upper: 95 }],
    ['at least', { kind: 'atLeast', unit: 'V', lower: 12.4 }],
    ['at most', { kind: 'atMost', unit: 'mm', upper: 0.5 }],
    ['below zero where that can be', { kind: 'range', unit: 'Cel', lower: -40, upper: -20 }],
    ['a vacuum', { kind: 'range', unit: 'kPa', lower: -60, upper: -50 }],
    ['without a figure', { kind: 'noFigure', unit: 'N.m' }],
  ])('makes sense: %s', (_, spec) => {
    expect(codes(spec)).toEqual([]);
  });

  it.each<[string, Specification, string[]]>([
    [
      'its lower limit is above the upper one',
      { kind: 'range', unit: 'N.m', lower: 132, upper: 108 },
      ['lowerAboveUpper'],
    ],
    [
      'nothing lies between its limits',
      { kind: 'range', unit: 'N.m', lower: 22, upper: 22 },
      ['noWindow'],
    ],
    [
      'it has no tolerance',
      { kind: 'target', unit: 'N.m', target: 22, tolerance: percent(0) },
      ['noWindow'],
    ],
    ['a torque is below zero', { kind: 'range', unit: 'N.m', lower: -5, upper: 10 }, ['negative']],
    ['a volume is below zero', { kind: 'atMost', unit: 'L', upper: -0.5 }, ['negative']],
    [
      'its tolerance is more than all of it',
      { kind: 'target', unit: 'N.m', target: 22, tolerance: percent(220) },
      ['percentTooLarge', 'negative'],
    ],
    [
      'its target lies outside, since a tolerance is below zero',
      { kind: 'target', unit: 'N.m', target: 22, tolerance: { in: 'unit', plus: 6, minus: -2 } },
      ['targetOutside'],
    ],
    ['it is no number', { kind: 'atLeast', unit: 'N.m', lower: Number.NaN }, ['notFinite']],
    [
      'it is endless',
      { kind: 'range', unit: 'N.m', lower: 1, upper: Number.POSITIVE_INFINITY },
      ['notFinite'],
    ],
  ])('is wrong when %s', (_, spec, faults) => {
    expect(codes(spec)).toEqual(faults);
    expect(checkSpecification(spec).every(({ severity }) => severity === 'wrong')).toBe(true);
  });

  it.each<[string, Specification]>([
    [
      'a length, as of a piston that stands back',
      { kind: 'range', unit: 'mm', lower: -0.2, upper: 0.05 },
    ],
    ['an angle, as of a wheel', { kind: 'range', unit: 'deg', lower: -1.5, upper: -0.5 }],
  ])('is only doubted below zero for %s', (_, spec) => {
    expect(checkSpecification(spec).map(({ code, severity }) => [code, severity])).toEqual([
      ['negative', 'doubtful'],
    ]);
  });

  it('that is right turns wrong when its limits are swapped', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 500, noNaN: true }),
        fc.double({ min: 0.001, max: 100, noNaN: true }),
        (lower, width) => {
          fc.pre(lower + width > lower);
          const range = { kind: 'range', unit: 'N.m' } as const;
          expect(codes({ ...range, lower, upper: lower + width })).toEqual([]);
          expect(codes({ ...range, lower: lower + width, upper: lower })).toEqual([
            'lowerAboveUpper',
          ]);
        },
      ),
    );
  });
});
