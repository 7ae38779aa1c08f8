import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bothTorques,
  bothTorqueWindows,
  digitsFor,
  formatDecimal,
  formatQuantity,
  formatWindow,
  fromCanonical,
  newtonMetres,
  roundDecimal,
  toCanonical,
  unitSchema,
} from '@/lib/quantity';

describe('rounding', () => {
  it.each([
    [2.675, 2, 2.68],
    [1.005, 2, 1.01],
    [8.345, 2, 8.35],
    [0.5, 0, 1],
    [-2.5, 0, -3],
    [-1.005, 2, -1.01],
    [1.45, 1, 1.5],
    [119.49999, 0, 119],
    [1e21, 2, 1e21],
    [4e-9, 8, 0],
  ])('takes %d to %d places as %d', (value, places, rounded) => {
    expect(roundDecimal(value, places)).toBe(rounded);
  });

  it('rounds the decimal number that was meant, not the double that stands for it', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -999999, max: 999999 }),
        fc.integer({ min: 1, max: 3 }),
        (n, p) => {
          // n and a five behind it, written out: always a half, always away from zero.
          const half = Number(`${String(n)}.5e-${String(p)}`);
          const away = n < 0 || Object.is(n, -0) ? n - 1 : n + 1;
          expect(roundDecimal(half, p)).toBe(Number(`${String(away)}e-${String(p)}`));
        },
      ),
    );
  });

  it('never moves a limit outwards when told the direction', () => {
    expect(roundDecimal(79.66, 0, 'up')).toBe(80);
    expect(roundDecimal(97.36, 0, 'down')).toBe(97);
    expect(
      roundDecimal(fromCanonical(toCanonical(80, '[lbf_av].[ft_i]'), '[lbf_av].[ft_i]'), 0, 'up'),
    ).toBe(80);
  });

  it('shows a dash for what is no number, and no negative nought', () => {
    expect(formatDecimal(Number.NaN, 1)).toBe('–');
    expect(formatDecimal(Number.POSITIVE_INFINITY, 1)).toBe('–');
    expect(formatDecimal(-0.04, 1)).toBe('0.0');
    expect(formatDecimal(-3.25, 1)).toBe('−3.3');
  });
});

describe('the digits that limits deserve', () => {
  it('are fine enough for a tenth of the tolerance', () => {
    expect(digitsFor({ lower: 108, upper: 132 }, 'N.m')).toBe(0);
    expect(digitsFor({ lower: 22.5, upper: 27.5 }, 'N.m')).toBe(1);
    expect(digitsFor({ lower: 0.2, upper: 0.25 }, 'mm')).toBe(3);
    expect(digitsFor({ lower: 108, upper: 132 }, '[lbf_av].[in_i]')).toBe(0);
  });

  it('are never more than the tool resolves', () => {
    expect(digitsFor({ lower: 22.5, upper: 27.5 }, 'N.m', 1)).toBe(0);
    expect(digitsFor({ lower: 22.5, upper: 27.5 }, 'N.m', 0.01)).toBe(1);
    expect(digitsFor({ lower: 22.5, upper: 27.5 }, '[lbf_av].[ft_i]', 1.4)).toBe(0);
  });

  it('are those of the limit itself where there is only one', () => {
    expect(digitsFor({ lower: 12.4 }, 'V')).toBe(1);
    expect(digitsFor({ upper: 0.05 }, 'mm')).toBe(2);
    expect(digitsFor({ upper: 130 }, 'kPa')).toBe(0);
  });
});

describe('a quantity on the screen', () => {
  it('has its symbol, and a degree of angle stands close', () => {
    expect(formatQuantity(120, 'N.m', 0)).toBe('120 N·m');
    expect(formatQuantity(90, 'deg', 0)).toBe('90°');
    expect(formatQuantity(-5, 'Cel', 0)).toBe('−5 °C');
    expect(formatQuantity(12.7, '[in_i]', 1)).toBe('0.5 in');
    expect(formatQuantity(119.3, '[lbf_av].[ft_i]')).toBe('87.99 lbf·ft');
  });

  it('is a torque in both units', () => {
    expect(bothTorques(newtonMetres(120), { lower: 108, upper: 132 })).toEqual({
      newtonMetres: '120 N·m',
      poundForceFeet: '89 lbf·ft',
    });
    expect(bothTorques(newtonMetres(88, '[lbf_av].[ft_i]'), { lower: 108, upper: 132 })).toEqual({
      newtonMetres: '119 N·m',
      poundForceFeet: '88 lbf·ft',
    });
    expect(bothTorques(newtonMetres(10)).newtonMetres).toBe('10 N·m');
  });

  it('is a window in both units, rounded inwards', () => {
    expect(bothTorqueWindows({ lower: 108, upper: 132 })).toEqual({
      newtonMetres: '108–132 N·m',
      poundForceFeet: '80–97 lbf·ft',
    });
    expect(formatWindow({ lower: 9, upper: 11 }, 'N.m')).toBe('9–11 N·m');
    expect(formatWindow({ lower: 22.5, upper: 27.5 }, 'N.m')).toBe('22.5–27.5 N·m');
    expect(formatWindow({ lower: 0, upper: 0.05 }, 'mm')).toBe('0.00–0.05 mm');
    expect(formatWindow({ lower: -5, upper: 3 }, 'Cel')).toBe('−5 to 3 °C');
    expect(formatWindow({ lower: 85, upper: 95 }, 'deg')).toBe('85–95°');
  });

  it('is a one-sided window, or none', () => {
    expect(formatWindow({ lower: 12.4 }, 'V')).toBe('at least 12.4 V');
    expect(formatWindow({ upper: 0.5 }, 'mm')).toBe('at most 0.5 mm');
    expect(formatWindow(undefined, 'N.m')).toBe('no figure');
    expect(formatWindow({ lower: Number.NaN }, 'N.m')).toBe('no figure');
  });

  it('never shows NaN and never throws, whatever the number', () => {
    const any = fc.double();
    fc.assert(
      fc.property(
        any,
        any,
        any,
        any,
        fc.constantFrom(...unitSchema.options),
        (v, a, b, r, unit) => {
          const shown = [
            formatQuantity(v, unit),
            formatQuantity(v, unit, digitsFor({ lower: a, upper: b }, unit, r)),
            formatWindow({ lower: a, upper: b }, unit),
            formatWindow({ lower: a }, unit),
          ].join();
          expect(shown).not.toMatch(/NaN|Infinity/);
        },
      ),
    );
  });
});
