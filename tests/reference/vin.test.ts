import { describe, expect, it } from 'vitest';
import { checkDigit, modelYear, parseVin } from '@/lib/vehicle';
import { source } from './record';

const cfr565 = source('49 CFR 565.15, check digit and model year', 'from memory');

describe('VINs agree with 49 CFR 565', () => {
  it('in the check digit', () => {
    cfr565.exactly('published example', checkDigit('1M8GDM9AXKP042788'), { ok: true, value: 'X' });
    cfr565.exactly('seventeen ones', checkDigit('11111111111111111'), { ok: true, value: '1' });
  });

  it('in the model year of the published example', () => {
    const vin = parseVin('1M8GDM9AXKP042788');
    expect(vin.ok).toBe(true);
    if (vin.ok)
      cfr565.exactly('K after a digit', modelYear(vin.value), { kind: 'one', year: 1989 });
  });
});
