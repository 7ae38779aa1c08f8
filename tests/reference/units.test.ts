import { unit as mathUnit } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { fromCanonical, toCanonical, unitSchema, type Unit } from '@/lib/quantity';
import { source } from './record';

const sp811 = source('NIST SP 811 (2008) appendix B.8, torque factors', 'printed');
const sp811Memory = source('NIST SP 811 (2008) appendix B.8, other factors', 'from memory');
const definitions = source('Definitions of the pound-force, inch and gallons', 'computed');
const mathjs = source('mathjs 15 unit conversion', 'computed');

describe('units agree with NIST SP 811', () => {
  it('for torque', () => {
    // Printed to seven digits.
    sp811.number('lbf·ft', toCanonical(1, '[lbf_av].[ft_i]'), 1.355818, { relative: 5e-7 });
    sp811.number('lbf·in', toCanonical(1, '[lbf_av].[in_i]'), 1.129848e-1, { relative: 5e-7 });
  });

  it('for the rest', () => {
    const printed: readonly (readonly [Unit, number])[] = [
      ['kgf.m', 9.80665],
      ['kgf.cm', 9.80665e-2],
      ['[in_i]', 25.4],
      ['[mil_i]', 2.54e-2],
      ['[qt_us]', 9.463529e-1],
      ['[foz_us]', 2.957353e-2],
      ['bar', 100],
      ['[psi]', 6.894757],
    ];
    for (const [unit, factor] of printed) {
      sp811Memory.number(unit, toCanonical(1, unit), factor, { relative: 5e-7 });
    }
    sp811Memory.number('°F', toCanonical(212, '[degF]'), 100, { absolute: 1e-12 });
    sp811Memory.number('°F', toCanonical(-40, '[degF]'), -40, { absolute: 1e-12 });
  });

  it('to the last digit of the definitions', () => {
    const lbf = 0.45359237 * 9.80665;
    const gallonUs = 231 * 2.54 ** 3; // 231 cubic inches, in mL
    const exact: readonly (readonly [Unit, number])[] = [
      ['[lbf_av].[ft_i]', lbf * 0.3048],
      ['[lbf_av].[in_i]', lbf * 0.0254],
      ['[psi]', lbf / 0.0254 ** 2 / 1000],
      ['[qt_us]', gallonUs / 4000],
      ['[foz_us]', gallonUs / 128000],
      ['[pt_br]', 4.54609 / 8],
    ];
    for (const [unit, factor] of exact) {
      definitions.number(unit, toCanonical(1, unit), factor, { relative: 1e-14 });
    }
    definitions.number('N·m in lbf·ft', fromCanonical(1, '[lbf_av].[ft_i]'), 0.7375621493, {
      relative: 5e-11,
    });
    definitions.number('N·m in lbf·in', fromCanonical(1, '[lbf_av].[in_i]'), 8.8507457913, {
      relative: 5e-11,
    });
  });
});

describe('units agree with mathjs', () => {
  // The imperial pint is not known to mathjs.
  const expressions: Readonly<Record<Exclude<Unit, '[pt_br]'>, readonly [string, string]>> = {
    'N.m': ['N m', 'N m'],
    'cN.m': ['cN m', 'N m'],
    '[lbf_av].[ft_i]': ['lbf ft', 'N m'],
    '[lbf_av].[in_i]': ['lbf in', 'N m'],
    'kgf.m': ['kgf m', 'N m'],
    'kgf.cm': ['kgf cm', 'N m'],
    deg: ['deg', 'deg'],
    mm: ['mm', 'mm'],
    '[in_i]': ['in', 'mm'],
    '[mil_i]': ['mil', 'mm'],
    L: ['L', 'L'],
    mL: ['mL', 'L'],
    '[qt_us]': ['qt', 'L'],
    '[foz_us]': ['floz', 'L'],
    kPa: ['kPa', 'kPa'],
    bar: ['bar', 'kPa'],
    '[psi]': ['psi', 'kPa'],
    Cel: ['degC', 'degC'],
    '[degF]': ['degF', 'degC'],
    V: ['V', 'V'],
    mV: ['mV', 'V'],
  };

  it.each(Object.entries(expressions))('%s', (name, [from, to]) => {
    const unit = unitSchema.parse(name);
    for (const value of [0.37, 88, 1200]) {
      const published = mathUnit(value, from).toNumber(to);
      expect(Number.isFinite(published)).toBe(true);
      mathjs.number(`${String(value)} ${from}`, toCanonical(value, unit), published, {
        relative: 1e-10,
      });
    }
  });
});
