import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  formatQuantity,
  fromCanonical,
  parseQuantity,
  quantityOf,
  toCanonical,
  unitFacts,
  unitSchema,
} from '@/lib/quantity';

describe('what people type', () => {
  it.each([
    ['88 lb-ft', 88, '[lbf_av].[ft_i]'],
    ['88 ft lbs', 88, '[lbf_av].[ft_i]'],
    ['88ft-lb', 88, '[lbf_av].[ft_i]'],
    ['88 lbf·ft', 88, '[lbf_av].[ft_i]'],
    ['88 Foot Pounds', 88, '[lbf_av].[ft_i]'],
    ['106 in-lbs', 106, '[lbf_av].[in_i]'],
    ['12,5 Nm', 12.5, 'N.m'],
    ['12.5N·m', 12.5, 'N.m'],
    ['120 newton metres', 120, 'N.m'],
    ['1,250.5 Nm', 1250.5, 'N.m'],
    ['1.250,5 Nm', 1250.5, 'N.m'],
    ['12 kgf·m', 12, 'kgf.m'],
    ['1/2 in', 0.5, '[in_i]'],
    ['1 1/2 in', 1.5, '[in_i]'],
    ['1-1/2"', 1.5, '[in_i]'],
    ['1½ in', 1.5, '[in_i]'],
    ['15 thou', 15, '[mil_i]'],
    ['3.2 l', 3.2, 'L'],
    ['3,2 Litres', 3.2, 'L'],
    ['.5 L', 0.5, 'L'],
    ['4 US qt', 4, '[qt_us]'],
    ['14.4V', 14.4, 'V'],
    ['90°', 90, 'deg'],
    ['-5 °C', -5, 'Cel'],
    ['−40 F', -40, '[degF]'],
    ['32 psi', 32, '[psi]'],
    ['88 [lbf_av].[ft_i]', 88, '[lbf_av].[ft_i]'],
  ] as const)('%s', (text, value, unit) => {
    expect(parseQuantity(text)).toEqual({ ok: true, value: { value, unit } });
  });

  it('takes a bare number in the unit of the field', () => {
    expect(parseQuantity('12.5', { unit: 'N.m' })).toEqual({
      ok: true,
      value: { value: 12.5, unit: 'N.m' },
    });
    expect(parseQuantity('88 lb-ft', { unit: 'N.m' })).toEqual({
      ok: true,
      value: { value: 88, unit: '[lbf_av].[ft_i]' },
    });
  });

  it.each([
    ['', {}, 'empty'],
    ['   ', {}, 'empty'],
    ['tight', {}, 'notANumber'],
    ['Nm', {}, 'notANumber'],
    ['1.2.3 Nm', {}, 'notANumber'],
    ['120-130 Nm', {}, 'notANumber'],
    ['120/130 Nm', {}, 'notANumber'],
    ['1/0 in', {}, 'notANumber'],
    ['1234567890123 Nm', {}, 'notANumber'],
    ['1,250 Nm', {}, 'ambiguous'],
    ['12.5', {}, 'unitMissing'],
    ['12 parsec', {}, 'unknownUnit'],
    ['12 kN·m', {}, 'unknownUnit'],
    ['2 pints', {}, 'unknownUnit'],
    ['2 qt', {}, 'unknownUnit'],
    ['12 bar', { quantity: 'torque' }, 'wrongQuantity'],
    ['12 bar', { unit: 'N.m' }, 'wrongQuantity'],
  ] as const)('refuses "%s" %j: %s', (text, expected, kind) => {
    const parsed = parseQuantity(text, expected);
    expect(parsed.ok ? parsed.value : parsed.error.kind).toBe(kind);
  });

  it('says what to type instead', () => {
    const message = (text: string, quantity?: 'torque') => {
      const parsed = parseQuantity(text, quantity === undefined ? {} : { quantity });
      return parsed.ok ? '' : parsed.error.message;
    };
    expect(message('1,250 Nm')).toBe('Is 1,250 1250 or 1.250? Type it without the comma.');
    expect(message('2 pt')).toBe('A pint may be imperial or US: type "imp pt", or litres.');
    expect(message('12 bar', 'torque')).toBe('bar measures pressure; torque is asked for.');
  });

  it('reads back what the screen shows, in every unit', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...unitSchema.options),
        fc.integer({ min: -99999, max: 99999 }),
        (unit, hundredths) => {
          const value = hundredths / 100;
          const shown = formatQuantity(toCanonical(value, unit), unit, 2);
          expect(parseQuantity(shown)).toEqual({ ok: true, value: { value, unit } });
        },
      ),
    );
  });

  it('never throws and never yields NaN, whatever is typed', () => {
    fc.assert(
      fc.property(fc.string(), fc.stringMatching(/^[-\d.,/½ ]{0,12}[a-zA-Z°]{0,4}$/), (a, b) => {
        for (const text of [a, b]) {
          const parsed = parseQuantity(text, { unit: 'N.m' });
          if (parsed.ok) expect(Number.isFinite(parsed.value.value)).toBe(true);
          else expect(parsed.error.message).not.toBe('');
        }
      }),
    );
  });
});

describe('conversion', () => {
  it('there and back gives the value again', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...unitSchema.options),
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        (unit, value) => {
          const back = fromCanonical(toCanonical(value, unit), unit);
          expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(value)));
        },
      ),
    );
  });

  it('knows each unit by its quantity and shows each by a symbol of its own', () => {
    const symbols = unitSchema.options.map((unit) => unitFacts[unit].symbol);
    expect(new Set(symbols).size).toBe(symbols.length);
    expect(quantityOf('[psi]')).toBe('pressure');
  });
});
