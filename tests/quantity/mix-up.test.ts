import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nameMixUp, nameMixUps, unitSchema } from '@/lib/quantity';

const wheelNut = { lower: 108, upper: 132, target: 120 };

describe('a value that does not fit its limits', () => {
  it('is named as the figure of another unit', () => {
    const mixUp = nameMixUp(88, 'N.m', wheelNut);
    expect(mixUp?.text).toBe('88 is the lbf·ft figure; 119 N·m?');
    expect(mixUp?.meant.value).toBeCloseTo(119.3119795, 6);
    expect(nameMixUp(120, '[lbf_av].[ft_i]', wheelNut)?.text).toBe(
      '120 is the N·m figure; 89 lbf·ft?',
    );
    expect(nameMixUp(88.5, 'N.m', { lower: 9, upper: 11 })?.text).toBe(
      '88.5 is the lbf·in figure; 10.0 N·m?',
    );
    expect(nameMixUp(2.2, 'kPa', { lower: 200, upper: 240 })?.text).toBe(
      '2.2 is the bar figure; 220 kPa?',
    );
    expect(nameMixUp(195, 'Cel', { lower: 88, upper: 93 })?.text).toBe(
      '195 is the °F figure; 90.6 °C?',
    );
  });

  it('is named as a slipped decimal', () => {
    expect(nameMixUp(1200, 'N.m', wheelNut)?.text).toBe('1200: is it 120?');
    expect(nameMixUp(1.2, 'N.m', wheelNut)?.text).toBe('1.2: is it 120?');
    expect(nameMixUp(144, 'V', { lower: 13.8, upper: 14.8 })?.text).toBe('144: is it 14.4?');
  });

  it('may have several explanations, the likelier first', () => {
    expect(nameMixUps(12, 'N.m', wheelNut).map(({ text }) => text)).toEqual([
      '12: is it 120?',
      '12 is the kgf·m figure; 118 N·m?',
    ]);
  });

  it('has none when it fits, when nothing explains it, or when a side is open', () => {
    expect(nameMixUp(132, 'N.m', wheelNut)).toBeUndefined();
    expect(nameMixUp(60, 'N.m', wheelNut)).toBeUndefined();
    expect(nameMixUp(1.24, 'V', { lower: 12.4 })).toBeUndefined();
    expect(nameMixUp(Number.NaN, 'N.m', wheelNut)).toBeUndefined();
  });

  it('is only ever named as something that fits', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...unitSchema.options),
        fc.double({ min: 0.001, max: 5000, noNaN: true }),
        fc.double({ min: 0.01, max: 3000, noNaN: true }),
        (unit, value, target) => {
          const limits = { lower: target * 0.9, upper: target * 1.1 };
          for (const { meant } of nameMixUps(value, unit, limits)) {
            expect(meant.unit).toBe(unit);
            expect(nameMixUps(meant.value, unit, limits)).toEqual([]);
          }
        },
      ),
    );
  });
});
