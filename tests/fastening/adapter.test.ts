import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judgeAtFastener, setTorque, torqueAtFastener, type Adapter } from '@/lib/fastening';
import { toCanonical } from '@/lib/quantity';

const crowfoot: Adapter = { wrenchMm: 400, adapterMm: 50, angleDeg: 0 };
const window = { lower: 72, upper: 88, target: 80 };

describe('a crowfoot or extension', () => {
  it('straight ahead lowers the set value, and says by what', () => {
    const result = setTorque(80, crowfoot);
    expect(result.ok && result.value.torqueNm).toBeCloseTo(71.111, 3);
    expect(result.ok && result.value.explain).toBe(
      'T set = T × L ÷ (L + E × cos θ) = 80 N·m × 400 mm ÷ (400 mm + 50 mm × cos 0°) = 71.11 N·m',
    );
  });

  it('square to the wrench changes nothing', () => {
    expect(setTorque(80, { ...crowfoot, angleDeg: 90 })).toMatchObject({ value: { torqueNm: 80 } });
  });

  it('turned back raises the set value', () => {
    const result = setTorque(80, { ...crowfoot, angleDeg: 180 });
    expect(result.ok && result.value.torqueNm).toBeCloseTo(91.429, 3); // 80 · 400 / 350
  });

  it('at 60° counts half of its length', () => {
    const result = setTorque(85, { ...crowfoot, angleDeg: 60 });
    expect(result.ok && result.value.torqueNm).toBeCloseTo(80, 9); // 85 · 400 / 425
  });

  it('is shown in the unit of the sheet', () => {
    const result = torqueAtFastener(
      toCanonical(72, '[lbf_av].[ft_i]'),
      crowfoot,
      '[lbf_av].[ft_i]',
    );
    expect(result.ok && result.value.explain).toBe(
      'T = T set × (L + E × cos θ) ÷ L = 72 lbf·ft × (400 mm + 50 mm × cos 0°) ÷ 400 mm = 81 lbf·ft',
    );
  });

  it('of no length changes nothing', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1000, noNaN: true }),
        fc.double({ min: 0, max: 180, noNaN: true }),
        (torque, angleDeg) => {
          expect(setTorque(torque, { wrenchMm: 400, adapterMm: 0, angleDeg })).toMatchObject({
            value: { torqueNm: torque },
          });
        },
      ),
    );
  });

  it('there and back is the same torque', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1000, noNaN: true }),
        fc.double({ min: 200, max: 1200, noNaN: true }),
        fc.double({ min: 0, max: 140, noNaN: true }),
        fc.double({ min: 0, max: 180, noNaN: true }),
        (torque, wrenchMm, adapterMm, angleDeg) => {
          const adapter = { wrenchMm, adapterMm, angleDeg };
          const there = setTorque(torque, adapter);
          const back = torqueAtFastener(there.ok ? there.value.torqueNm : 0, adapter);
          expect(back.ok && back.value.torqueNm / torque).toBeCloseTo(1, 12);
        },
      ),
    );
  });

  it.each<[string, Adapter, string]>([
    ['has an angle beyond 180°', { ...crowfoot, angleDeg: 200 }, 'adapter angle'],
    ['has an angle below 0°', { ...crowfoot, angleDeg: -10 }, 'adapter angle'],
    [
      'is turned back and longer than the wrench',
      { ...crowfoot, adapterMm: 500, angleDeg: 180 },
      'adapter length',
    ],
    [
      'is turned back and leaves no lever to speak of',
      { ...crowfoot, adapterMm: 350, angleDeg: 180 },
      'adapter length',
    ],
    ['has a length below zero', { ...crowfoot, adapterMm: -5 }, 'adapter length'],
    ['is on a wrench without length', { ...crowfoot, wrenchMm: 0 }, 'wrench length'],
  ])('is refused when it %s', (_, adapter, what) => {
    for (const result of [setTorque(80, adapter), torqueAtFastener(80, adapter)]) {
      expect(result).toMatchObject({ ok: false, error: { code: 'outOfDomain', what } });
    }
  });

  it('gives a number or a reason, whatever is typed', () => {
    fc.assert(
      fc.property(
        fc.double(),
        fc.double(),
        fc.double(),
        fc.double(),
        (torque, wrenchMm, adapterMm, angleDeg) => {
          const adapter = { wrenchMm, adapterMm, angleDeg, lengthsWithinMm: 2 };
          for (const result of [
            setTorque(torque, adapter),
            torqueAtFastener(torque, adapter),
            judgeAtFastener(torque, adapter, window, 2, 'mustProve'),
          ]) {
            if (result.ok) expect(result.value.torqueNm).toSatisfy(Number.isFinite);
            else expect(result.error.code).toBe('outOfDomain');
          }
        },
      ),
      { numRuns: 1000 },
    );
  });
});

describe('a reading through an adapter', () => {
  it('is judged by the torque at the fastener, not by what the wrench shows', () => {
    expect(judgeAtFastener(71.1, crowfoot, window, undefined, 'simple')).toMatchObject({
      value: { verdict: 'inSpec' },
    });
    expect(judgeAtFastener(80, crowfoot, window, undefined, 'simple')).toMatchObject({
      value: { verdict: 'outOfSpec' },
    });
  });

  it('carries the uncertainty of the tool along the lever', () => {
    const result = judgeAtFastener(71.1, crowfoot, window, 2.4, 'mustProve');
    expect(result.ok && result.value.expandedUncertaintyNm).toBeCloseTo(2.7, 9); // 2.4 · 450 / 400
    expect(result).toMatchObject({ value: { verdict: 'inSpec' } });
  });

  it('is not provable near a limit', () => {
    // 77 at the wrench is 86.6 at the fastener, within 2.7 of 88.
    expect(judgeAtFastener(77, crowfoot, window, 2.4, 'mustProve')).toMatchObject({
      value: { verdict: 'notProvable' },
    });
    expect(judgeAtFastener(77, crowfoot, window, undefined, 'mustProve')).toMatchObject({
      value: { verdict: 'notProvable' },
    });
  });

  it('is less certain when the lengths are', () => {
    // 80 N·m, ±10 mm on each: 80 · 10/400 = 2.00 from E, 80 · 50/400 · 10/400 = 0.25 from L, 2.7 from the tool.
    const result = judgeAtFastener(80, { ...crowfoot, lengthsWithinMm: 10 }, window, 2.4, 'simple');
    expect(result.ok && result.value.expandedUncertaintyNm).toBeCloseTo(
      Math.sqrt(4 + 0.0625 + 7.29),
      9,
    );
  });

  it('without a figure is recorded as such', () => {
    expect(judgeAtFastener(80, crowfoot, undefined, 2, 'mustProve')).toMatchObject({
      value: { verdict: 'noFigure' },
    });
  });
});
