import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { explainVerdict, judge } from '@/lib/metrology';
import { toCanonical } from '@/lib/quantity';

const wheelNut = { lower: 108, upper: 132, target: 120 };
const nm = (value: number) => ({ value, unit: 'N.m' }) as const;
const sentence = (...of: Parameters<typeof explainVerdict>) => explainVerdict(...of).sentence;

describe('the sentence under a reading', () => {
  it('says that a reading is in spec', () => {
    expect(sentence(nm(119), wheelNut, 4.8, 'simple')).toBe('119 N·m is within 108–132 N·m.');
    expect(sentence(nm(108), wheelNut, undefined, 'simple')).toBe('108 N·m is within 108–132 N·m.');
    expect(sentence({ value: 14.2, unit: 'V' }, { lower: 13.8 }, undefined, 'simple')).toBe(
      '14.2 V is at least 13.8 V.',
    );
    expect(sentence({ value: 88, unit: '[lbf_av].[ft_i]' }, wheelNut, 4.8, 'mustProve')).toBe(
      '88 lbf·ft is within 80–97 lbf·ft, and stays so with the tool’s ±3.5 lbf·ft.',
    );
  });

  it('says by how much a reading is out of spec', () => {
    expect(sentence(nm(98), wheelNut, 4.8, 'simple')).toBe(
      '98 N·m is below 108 N·m, out of spec by 10 N·m.',
    );
    expect(sentence(nm(132.4), wheelNut, 4.8, 'simple')).toBe(
      '132.4 N·m is above 132 N·m, out of spec by 0.4 N·m.',
    );
    // 180 ± 6 %: the limit of 169.2 is shown as 170, and the difference is from what is shown.
    expect(sentence(nm(160), { lower: 169.2, upper: 190.8 }, undefined, 'simple')).toBe(
      '160 N·m is below 170 N·m, out of spec by 10 N·m.',
    );
    expect(sentence({ value: 79.5, unit: '[lbf_av].[ft_i]' }, wheelNut, 1, 'simple')).toBe(
      '79.5 lbf·ft is below 79.7 lbf·ft, out of spec by 0.2 lbf·ft.',
    );
    expect(sentence({ value: 20, unit: '[degF]' }, { lower: 0, upper: 10 }, 1, 'simple')).toBe(
      '20 °F is below 32 °F, out of spec by 12 °F.',
    );
  });

  it('says why a reading proves nothing', () => {
    expect(sentence(nm(110), wheelNut, 4.8, 'mustProve')).toBe(
      '110 N·m is within 108–132 N·m, but the tool’s ±4.8 N·m proves only 112.8–127.2 N·m.',
    );
    expect(sentence(nm(104), wheelNut, 4.8, 'mustProve')).toBe(
      '104 N·m is below 108 N·m, by less than the tool’s ±4.8 N·m can prove.',
    );
    expect(sentence(nm(120), wheelNut, 13, 'mustProve')).toBe(
      '120 N·m is within 108–132 N·m, but the tool’s ±13.0 N·m is too coarse to prove it.',
    );
    expect(sentence(nm(120), wheelNut, undefined, 'mustProve')).toBe(
      '120 N·m is within 108–132 N·m, but it is not known how far the tool may be off.',
    );
  });

  it('says that nothing is judged where the sheet gives no figure', () => {
    expect(sentence(nm(35), undefined, 4.8, 'mustProve')).toBe(
      'The sheet gives no figure: 35 N·m is recorded, not judged.',
    );
  });

  it('tells a value from a limit that rounds to the same number', () => {
    // 79.8 lbf·ft is in spec; the window of whole numbers begins at 80.
    expect(sentence({ value: 79.8, unit: '[lbf_av].[ft_i]' }, wheelNut, 0, 'simple')).toBe(
      '79.8 lbf·ft is within 79.7–97.3 lbf·ft.',
    );
  });

  it('agrees with the verdict and shows no NaN, whatever the numbers', () => {
    const number = fc.oneof(fc.double(), fc.double({ min: 0, max: 300, noNaN: true }));
    fc.assert(
      fc.property(number, number, number, number, fc.boolean(), (value, a, b, u, must) => {
        const rule = must ? 'mustProve' : 'simple';
        const limits = { lower: Math.min(a, b), upper: Math.max(a, b) };
        const unit = '[lbf_av].[ft_i]' as const;
        const { verdict, sentence: said } = explainVerdict({ value, unit }, limits, u, rule);
        expect(verdict).toBe(judge(toCanonical(value, unit), limits, u, rule));
        expect(said).not.toMatch(/NaN|Infinity|undefined/);
      }),
    );
  });
});
