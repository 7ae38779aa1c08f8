import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addPrevailing, type Specification } from '@/lib/fastening';

const specified: Specification = {
  kind: 'target',
  unit: 'N.m',
  target: 50,
  tolerance: { in: 'percent', plus: 10, minus: 10 },
};
const allowed: Specification = { kind: 'range', unit: 'N.m', lower: 2, upper: 12 };

describe('a self-locking nut', () => {
  it('is set to the specified torque and what it takes to turn', () => {
    const result = addPrevailing({ specified, allowed, measuredNm: 6 });
    expect(result).toEqual({
      ok: true,
      value: {
        setNm: 56,
        interval: { lower: 51, upper: 61, target: 56 },
        specification: {
          kind: 'target',
          unit: 'N.m',
          target: 56,
          tolerance: { in: 'unit', plus: 5, minus: 5 },
        },
        explain: '50 N·m specified + 6 N·m to turn the nut = 56 N·m',
      },
    });
  });

  it('is explained in the unit of the sheet', () => {
    const feet: Specification = { kind: 'range', unit: '[lbf_av].[ft_i]', lower: 30, upper: 40 };
    const result = addPrevailing(
      { specified: feet, allowed, measuredNm: 6.779089741657002 },
      '[lbf_av].[ft_i]',
    );
    expect(result.ok && result.value.explain).toBe(
      '35 lbf·ft specified + 5 lbf·ft to turn the nut = 40 lbf·ft',
    );
  });

  it('that turns too easily no longer locks', () => {
    expect(addPrevailing({ specified, allowed, measuredNm: 1.5 })).toMatchObject({
      error: {
        code: 'tooLoose',
        message: 'It turns at 1.5 N·m, allowed is 2–12 N·m: it no longer locks, take a new nut.',
      },
    });
  });

  it('that turns too stiffly is looked at before going on', () => {
    expect(addPrevailing({ specified, allowed, measuredNm: 12.5 })).toMatchObject({
      error: { code: 'tooStiff' },
    });
  });

  it('on a limit is allowed', () => {
    expect(addPrevailing({ specified, allowed, measuredNm: 2 }).ok).toBe(true);
    expect(addPrevailing({ specified, allowed, measuredNm: 12 }).ok).toBe(true);
  });

  it('without a figure has nothing to add to', () => {
    const none: Specification = { kind: 'noFigure', unit: 'N.m' };
    expect(addPrevailing({ specified: none, allowed, measuredNm: 6 })).toMatchObject({
      error: { code: 'noFigure' },
    });
  });

  it('is measured in torque', () => {
    const turn: Specification = { kind: 'range', unit: 'deg', lower: 2, upper: 12 };
    expect(addPrevailing({ specified, allowed: turn, measuredNm: 6 })).toMatchObject({
      error: { code: 'wrongQuantity' },
    });
  });

  it('gives a number or a reason, whatever was measured', () => {
    const open: Specification = { kind: 'atLeast', unit: 'N.m', lower: 0 };
    fc.assert(
      fc.property(fc.double(), (measuredNm) => {
        const result = addPrevailing({ specified, allowed: open, measuredNm });
        expect(result.ok).toBe(measuredNm >= 0 && Number.isFinite(measuredNm));
        if (result.ok) expect(result.value.setNm).toBe(50 + measuredNm);
        else expect(result.error.code).toBe('outOfDomain');
      }),
    );
  });
});
