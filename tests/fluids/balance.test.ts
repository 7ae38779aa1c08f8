import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { balanceFluid, capacityFor, fillLimits, type FluidMoves } from '@/lib/fluids';

const moves = (of: Partial<FluidMoves>): FluidMoves => ({
  drainedL: 0,
  spilledL: 0,
  returnedL: 0,
  newL: 0,
  ...of,
});
const limits = fillLimits(8, 0.3);

describe('the balance of a fluid', () => {
  it('is what was returned and new against what was drained and spilled', () => {
    expect(
      balanceFluid(moves({ drainedL: 7.5, spilledL: 0.4, returnedL: 6, newL: 2 }), limits, 0.3),
    ).toMatchObject({
      ok: true,
      value: {
        outL: 7.9,
        inL: 8,
        wasteL: 1.5,
        fill: 'within',
        correctL: 0,
        balances: true,
        findings: [],
      },
    });
  });

  it('holds with exactly the tolerance between them', () => {
    const result = balanceFluid(moves({ drainedL: 7.7, newL: 8 }), limits, 0.3);
    expect(result.ok && result.value.balances).toBe(true);
  });

  it('says when too little went in, and how much to add', () => {
    const result = balanceFluid(moves({ drainedL: 7.4, newL: 7.2 }), limits, 0.3);
    expect(result.ok && result.value.fill).toBe('under');
    expect(result.ok && result.value.correctL).toBeCloseTo(0.5, 12);
    expect(result.ok && result.value.findings).toEqual([
      '7.2 L went in; 7.7 L to 8.3 L is due: 0.5 L too little.',
    ]);
  });

  it('says when too much went in, and that in and out differ', () => {
    const result = balanceFluid(moves({ drainedL: 7, newL: 8.5 }), limits, 0.3);
    expect(result.ok && result.value.fill).toBe('over');
    expect(result.ok && result.value.correctL).toBeCloseTo(-0.2, 12);
    expect(result.ok && result.value.findings).toEqual([
      '8.5 L went in; 7.7 L to 8.3 L is due: 0.2 L too much.',
      '8.5 L went in and 7 L came out: they differ by 1.5 L, 0.3 L is allowed. ' +
        'It came in low, or a volume was misread.',
    ]);
  });

  it('is refused for what cannot be', () => {
    const kind = (of: Partial<FluidMoves>, within = limits) => {
      const result = balanceFluid(moves(of), within, 0.3);
      return result.ok ? result.value : result.error.kind;
    };
    expect(kind({ drainedL: -1 })).toBe('notAVolume');
    expect(kind({ newL: Number.NaN })).toBe('notAVolume');
    expect(kind({ newL: Number.POSITIVE_INFINITY })).toBe('notAVolume');
    expect(kind({ drainedL: 2, returnedL: 3 })).toBe('outOfDomain');
    expect(kind({}, { lowerL: 2, upperL: 1 })).toBe('outOfDomain');
  });

  it('leaves no drop unaccounted', () => {
    const litres = fc.double({ min: 0, max: 50, noNaN: true });
    fc.assert(
      fc.property(litres, litres, litres, litres, (drainedL, spilledL, returned, newL) => {
        const returnedL = Math.min(returned, drainedL);
        const result = balanceFluid({ drainedL, spilledL, returnedL, newL }, limits, 0.3);
        if (!result.ok) throw new Error(result.error.message);
        const { differenceL, wasteL, inL, correctL, findings, fill, balances } = result.value;
        // What the vehicle gained came from the can, less what went to waste or to the floor.
        expect(differenceL).toBeCloseTo(newL - wasteL - spilledL, 9);
        expect(inL + correctL).toBeGreaterThanOrEqual(limits.lowerL - 1e-9);
        expect(inL + correctL).toBeLessThanOrEqual(limits.upperL + 1e-9);
        expect(findings.length === 0).toBe(fill === 'within' && balances);
      }),
    );
  });

  it('is never NaN and never a throw, whatever the numbers', () => {
    const any = fc.double();
    fc.assert(
      fc.property(any, any, any, any, any, any, any, (a, b, c, d, e, f, g) => {
        const result = balanceFluid(
          { drainedL: a, spilledL: b, returnedL: c, newL: d },
          { lowerL: e, upperL: f },
          g,
        );
        if (!result.ok) return;
        for (const value of Object.values(result.value)) expect(value).not.toBeNaN();
      }),
    );
  });
});

describe('the capacity', () => {
  it('is larger where the filter is changed', () => {
    const sheet = { withFilterL: 6.5, withoutFilterL: 6 };
    expect(capacityFor(sheet, true)).toEqual({ ok: true, value: 6.5 });
    expect(capacityFor(sheet, false)).toEqual({ ok: true, value: 6 });
    expect(capacityFor({ withFilterL: 6.5 }, false)).toEqual({ ok: true, value: 6.5 });
  });

  it('is refused where the sheet cannot be right', () => {
    expect(capacityFor({ withFilterL: 6, withoutFilterL: 6.5 }, true)).toMatchObject({
      error: { kind: 'outOfDomain' },
    });
    expect(capacityFor({ withFilterL: Number.NaN }, true)).toMatchObject({
      error: { kind: 'notAVolume' },
    });
    expect(capacityFor({ withFilterL: 6, withoutFilterL: -1 }, false)).toMatchObject({
      error: { kind: 'notAVolume' },
    });
  });
});
