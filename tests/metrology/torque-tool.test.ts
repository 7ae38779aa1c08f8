import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addMonths,
  admitTool,
  bestAngleTool,
  calibrationHoldsUntil,
  chooseTool,
  cyclesSinceCalibration,
  toolUncertainty,
  usableRange,
  type ToolNeed,
  type ToolUseNow,
} from '@/lib/metrology';
import type { TorqueTool } from '@/lib/shop';

const wrench: TorqueTool = {
  id: 'tw-200',
  name: 'Half-inch wrench',
  kind: 'click',
  driveIn: '1/2',
  lowerNm: 40,
  upperNm: 200,
  resolutionNm: 1,
  calibration: { on: '2026-01-31', intervalMonths: 12, intervalCycles: 5000 },
};
const certified = (tool: TorqueTool, expandedPercent: number): TorqueTool => ({
  ...tool,
  calibration: { ...tool.calibration, certificate: 'C-1', expandedPercent },
});
const electronic: TorqueTool = certified(
  {
    ...wrench,
    id: 'te-135',
    name: 'Electronic wrench',
    kind: 'electronic',
    lowerNm: 7,
    upperNm: 135,
  },
  1.2,
);

describe('a tool for a tightening angle', () => {
  const angled = (id: string, expandedAngleDeg: number): TorqueTool => ({
    ...electronic,
    id,
    expandedAngleDeg,
  });
  const best = (tools: readonly TorqueTool[], on = '2026-06-01', cycles = 0): string | undefined =>
    bestAngleTool(tools, on, () => cycles)?.tool.id;

  it('is the one whose certificate gives the smallest uncertainty', () => {
    expect(best([wrench, angled('a', 3), angled('b', 2)])).toBe('b');
    expect(bestAngleTool([angled('b', 2)], '2026-06-01', () => 0)?.expandedDeg).toBe(2);
  });

  it('is none without a certificate for angles, or when the calibration has run out', () => {
    expect(best([wrench, electronic])).toBeUndefined();
    expect(best([angled('b', 2)], '2027-02-01')).toBeUndefined();
    expect(best([angled('b', 2)], '2026-01-30')).toBeUndefined();
    expect(best([angled('b', 2)], '2026-06-01', 5000)).toBeUndefined();
  });
});

describe('months on the calendar', () => {
  it.each([
    ['2026-01-15', 12, '2027-01-15'],
    ['2026-08-31', 6, '2027-02-28'],
    ['2027-08-31', 6, '2028-02-29'],
    ['2028-02-29', 12, '2029-02-28'],
    ['2026-12-01', 1, '2027-01-01'],
    ['2026-03-31', -1, '2026-02-28'],
  ])('%s and %d months is %s', (from, months, to) => {
    expect(addMonths(from, months)).toEqual({ ok: true, value: to });
  });

  it.each([
    ['2026-02-29', 1],
    ['2026-13-01', 1],
    ['tomorrow', 1],
    ['2026-01-01', 0.5],
    ['2026-01-01', Number.NaN],
    ['2026-01-01', Number.POSITIVE_INFINITY],
  ])('%s and %d months is no day', (from, months) => {
    expect(addMonths(from, months)).toMatchObject({ ok: false, error: { kind: 'notADay' } });
  });
});

describe('how far a torque tool may be off', () => {
  it('is its class limit where no certificate gives an uncertainty', () => {
    const result = toolUncertainty(wrench, 120);
    // u = hypot(120 × 4 % / √3, 0.5 / √3), U = 2u
    expect(result).toMatchObject({
      ok: true,
      value: {
        from: 'classLimit',
        parts: [
          { of: 'calibration', spread: 'rectangular' },
          { of: 'setting', spread: 'rectangular' },
        ],
      },
    });
    expect(result.ok && result.value.expandedNm).toBeCloseTo(5.5726, 4);
  });

  it('is its certificate and half a step of the scale', () => {
    const result = toolUncertainty(certified(wrench, 2), 100);
    expect(result).toMatchObject({ ok: true, value: { from: 'certificate' } });
    // u = hypot(1, 0.5 / √3), U = 2u
    expect(result.ok && result.value.expandedNm).toBeCloseTo(2.0817, 4);
  });

  it('counts the value set on a click wrench, and the value read elsewhere', () => {
    const part = (tool: TorqueTool) => {
      const result = toolUncertainty(tool, 100);
      return result.ok ? result.value.parts[1]?.of : result.error.kind;
    };
    expect(part(wrench)).toBe('setting');
    expect(part({ ...wrench, kind: 'dial' })).toBe('reading');
    expect(part(electronic)).toBe('reading');
  });

  it('allows six percent to tools up to ten newton metres', () => {
    const small = { ...wrench, lowerNm: 2, upperNm: 10, resolutionNm: 0.001 };
    const result = toolUncertainty(small, 5);
    expect(result.ok && result.value.expandedNm).toBeCloseTo((2 * 0.3) / Math.sqrt(3), 4);
  });

  it('is unknown outside the range, for angles, and without a certificate that was asked for', () => {
    const error = (...of: Parameters<typeof toolUncertainty>) => {
      const result = toolUncertainty(...of);
      return result.ok ? result.value : result.error.kind;
    };
    expect(error(wrench, 39)).toBe('outOfRange');
    expect(error(wrench, 201)).toBe('outOfRange');
    expect(error(wrench, 0)).toBe('notATorque');
    expect(error(wrench, Number.NaN)).toBe('notATorque');
    expect(error({ ...wrench, kind: 'angle' }, 100)).toBe('measuresNoTorque');
    expect(error(wrench, 100, { certificateNeeded: true })).toBe('missingCertificate');
    expect(error({ ...wrench, resolutionNm: Number.NaN }, 100)).toBe('badToolData');
  });

  it('grows with the torque and never falls below a part of it', () => {
    fc.assert(
      fc.property(fc.double({ min: 40, max: 200, noNaN: true }), (torque) => {
        const at = toolUncertainty(wrench, torque);
        const lower = toolUncertainty(wrench, 40);
        if (!at.ok || !lower.ok) throw new Error('in range');
        expect(at.value.expandedNm).toBeGreaterThanOrEqual(lower.value.expandedNm);
        for (const part of at.value.parts) {
          expect(at.value.expandedNm).toBeGreaterThan(2 * part.standardNm * (1 - 1e-12));
        }
      }),
    );
  });
});

describe('the usable range', () => {
  it('is what the tool says, or from a fifth up', () => {
    expect(usableRange(wrench)).toEqual({ lowerNm: 40, upperNm: 200 });
    expect(usableRange({ ...wrench, lowerNm: 0 })).toEqual({ lowerNm: 40, upperNm: 200 });
    expect(usableRange({ ...wrench, lowerNm: 0, upperNm: 340 }).lowerNm).toBe(68);
  });
});

describe('cycles', () => {
  it('are readings with the tool since its calibration, each fastener once', () => {
    const use = (id: string, at: string, fasteners?: number) => ({
      tool: { id },
      at,
      ...(fasteners === undefined ? {} : { fasteners }),
    });
    expect(
      cyclesSinceCalibration(wrench, [
        use('tw-200', '2026-01-30T23:59:59+01:00'),
        use('tw-200', '2026-01-31T08:00:00+01:00'),
        use('tw-200', '2026-03-01T08:00:00Z', 12),
        use('te-135', '2026-03-01T08:00:00Z'),
        { at: '2026-03-01T08:00:00Z' },
      ]),
    ).toBe(13);
  });
});

describe('a tool for a step', () => {
  const need: ToolNeed = { torqueNm: 120 };
  const now: ToolUseNow = { on: '2026-06-01', cycles: 300 };
  const refused = (tool: TorqueTool, of: Partial<ToolNeed> = {}, at: Partial<ToolUseNow> = {}) => {
    const result = admitTool(tool, { ...need, ...of }, { ...now, ...at });
    return result.ok ? 'admitted' : result.error.message;
  };

  it('is refused with a reason', () => {
    expect(refused(wrench, {}, { on: '2027-02-01' })).toBe(
      'The calibration of Half-inch wrench ran out on 2027-01-31.',
    );
    expect(refused(wrench, {}, { cycles: 5000 })).toBe(
      'Half-inch wrench is due for calibration: 5000 of 5000 cycles used.',
    );
    expect(refused(wrench, {}, { on: '2026-01-30' })).toBe(
      'Half-inch wrench is noted as calibrated on 2026-01-31, after today.',
    );
    expect(refused(wrench, { torqueNm: 25 })).toBe(
      '25 N·m is too little for Half-inch wrench, good from 40 N·m.',
    );
    expect(refused(wrench, { torqueNm: 210 })).toBe(
      '210 N·m is too much for Half-inch wrench, good to 200 N·m.',
    );
    expect(refused(wrench, { drive: '3/8' })).toBe(
      'Half-inch wrench has a 1/2 in drive; 3/8 in is needed.',
    );
    expect(refused(wrench, { unit: '[lbf_av].[ft_i]' })).toBe(
      'Half-inch wrench is marked in N·m, not in lbf·ft.',
    );
    expect(refused({ ...wrench, kind: 'angle' })).toBe('Half-inch wrench measures angles only.');
    expect(refused(wrench, {}, { on: 'today' })).toBe('"today" is no day; write 2026-03-31.');
    expect(refused(wrench, { torqueNm: Number.NaN })).toBe(
      'A torque is above zero, and cycles are a count.',
    );
  });

  it('is admitted up to and on the last day, and at both ends of its range', () => {
    expect(calibrationHoldsUntil(wrench)).toEqual({ ok: true, value: '2027-01-31' });
    expect(refused(wrench, {}, { on: '2027-01-31', cycles: 4999 })).toBe('admitted');
    expect(refused(wrench, { torqueNm: 40 })).toBe('admitted');
    expect(refused(wrench, { torqueNm: 200, drive: '1/2', unit: 'N.m' })).toBe('admitted');
    expect(refused({ ...wrench, scale: ['[lbf_av].[ft_i]'] }, { unit: '[lbf_av].[ft_i]' })).toBe(
      'admitted',
    );
  });

  it('is the one with the smallest uncertainty whose range fits', () => {
    const tools = [wrench, certified({ ...wrench, id: 'tw-b' }, 2.2), electronic];
    const names = (torqueNm: number) =>
      chooseTool(tools, { torqueNm }, '2026-06-01', () => 0).usable.map(({ tool }) => tool.id);
    expect(names(120)).toEqual(['te-135', 'tw-b', 'tw-200']);
    expect(names(180)).toEqual(['tw-b', 'tw-200']);
    expect(names(10)).toEqual(['te-135']);
    expect(names(500)).toEqual([]);
  });

  it('is named among the refused when it is not among the usable', () => {
    const choice = chooseTool([wrench, electronic], { torqueNm: 180 }, '2026-06-01', (id) =>
      id === 'tw-200' ? 5001 : 0,
    );
    expect(choice.usable).toEqual([]);
    expect(choice.refused.map(({ tool, why }) => [tool.id, why.kind])).toEqual([
      ['tw-200', 'cyclesUsedUp'],
      ['te-135', 'aboveRange'],
    ]);
  });

  it('gets an answer, never NaN and never a throw, whatever the numbers', () => {
    const any = fc.double();
    fc.assert(
      fc.property(
        any,
        any,
        any,
        any,
        any,
        fc.string(),
        (torqueNm, lowerNm, upperNm, r, cycles, on) => {
          const tool = { ...wrench, lowerNm, upperNm, resolutionNm: r };
          for (const day of [on, '2026-06-01']) {
            const result = admitTool(tool, { torqueNm }, { on: day, cycles });
            if (result.ok) expect(Number.isFinite(result.value.uncertainty.expandedNm)).toBe(true);
            else expect(result.error.message).not.toMatch(/NaN m|undefined/);
          }
        },
      ),
    );
  });
});
