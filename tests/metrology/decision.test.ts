import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decide, guardBands, judge, type Decision, type GuardBand } from '@/lib/metrology';

const wheelNut = { lower: 108, upper: 132 };

const decided = (...of: Parameters<typeof decide>): Decision => {
  const result = decide(...of);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};
const error = (...of: Parameters<typeof decide>) => {
  const result = decide(...of);
  return result.ok ? result.value : result.error.kind;
};

describe('a guarded decision', () => {
  it('has four outcomes', () => {
    const outcome = (value: number) => decided(value, wheelNut, 4.8, 'expanded').outcome;
    expect(outcome(120)).toBe('pass');
    expect(outcome(112.8)).toBe('pass');
    expect(outcome(112.7)).toBe('conditionalPass');
    expect(outcome(108)).toBe('conditionalPass');
    expect(outcome(107.9)).toBe('conditionalFail');
    expect(outcome(103.2)).toBe('conditionalFail');
    expect(outcome(103.1)).toBe('fail');
    expect(outcome(137)).toBe('fail');
  });

  it('accepts the whole tolerance where the guard band is none', () => {
    expect(decided(108, wheelNut, 4.8, 'none')).toMatchObject({
      outcome: 'pass',
      conclusion: 'accepted',
      acceptance: { lower: 108, upper: 132 },
    });
    expect(decided(107.9, wheelNut, 4.8, 'none').conclusion).toBe('rejected');
  });

  it('draws in only the limits there are', () => {
    expect(decided(13, { lower: 12.4 }, 0.2, 'expanded').acceptance).toEqual({ lower: 12.6 });
    expect(decided(0.4, { upper: 0.5 }, 0.02, 'expanded').acceptance).toEqual({ upper: 0.48 });
  });

  it('leaves nothing to accept where the uncertainty swallows the tolerance', () => {
    const decision = decided(120, wheelNut, 13, 'expanded');
    expect(decision.acceptance).toBeUndefined();
    expect(decision.conclusion).toBe('notProvable');
  });

  it('is even odds on a single limit and sure for a perfect tool', () => {
    expect(decided(108, { lower: 108 }, 4.8, 'none').conformance).toBe(0.5);
    expect(decided(108, wheelNut, 0, 'expanded')).toMatchObject({
      conformance: 1,
      outcome: 'pass',
    });
    expect(decided(107, wheelNut, 0, 'expanded')).toMatchObject({
      conformance: 0,
      outcome: 'fail',
    });
  });

  it('refuses what cannot be decided, and says why', () => {
    expect(error(Number.NaN, wheelNut, 1, 'none')).toBe('notANumber');
    expect(error(120, undefined, 1, 'none')).toBe('noLimits');
    expect(error(120, { target: 120 }, 1, 'none')).toBe('noLimits');
    expect(error(120, { lower: 132, upper: 108 }, 1, 'none')).toBe('limitsCrossed');
    expect(error(120, { lower: Number.NaN }, 1, 'none')).toBe('notANumber');
    expect(error(120, wheelNut, undefined, 'expanded')).toBe('missingUncertainty');
    expect(error(120, wheelNut, -1, 'expanded')).toBe('notANumber');
  });

  const value = fc.double({ min: 0, max: 300, noNaN: true });
  const limits = fc
    .tuple(value, value)
    .map(([a, b]) => ({ lower: Math.min(a, b), upper: Math.max(a, b) }));
  const uncertainty = fc.double({ min: 0, max: 40, noNaN: true });

  it('agrees with the verdict on the screen', () => {
    const words = {
      accepted: 'inSpec',
      rejected: 'outOfSpec',
      notProvable: 'notProvable',
    } as const;
    fc.assert(
      fc.property(value, limits, uncertainty, (v, l, u) => {
        expect(words[decided(v, l, u, 'none').conclusion]).toBe(judge(v, l, u, 'simple'));
        expect(words[decided(v, l, u, 'expanded').conclusion]).toBe(judge(v, l, u, 'mustProve'));
      }),
    );
  });

  it('accepts at the risk that its guard band promises', () => {
    // U at most a quarter of the tolerance, so that only the nearer limit counts.
    const promised: Record<GuardBand, number> = {
      none: 0.5,
      iso14253Default: 0.05,
      expanded: 0.0228,
    };
    fc.assert(
      fc.property(
        value,
        limits,
        fc.double({ min: 0.001, max: 0.25, noNaN: true }),
        (v, l, share) => {
          const u = (l.upper - l.lower) * share;
          fc.pre(u > 1e-3);
          for (const guard of ['none', 'iso14253Default', 'expanded'] as const) {
            const { outcome, risk } = decided(v, l, u, guard);
            if (outcome === 'pass') expect(risk).toBeLessThanOrEqual(promised[guard] + 1e-3);
          }
        },
      ),
    );
  });

  it('is never NaN and never throws, whatever the numbers', () => {
    const any = fc.double();
    fc.assert(
      fc.property(
        any,
        any,
        any,
        any,
        fc.constantFrom<GuardBand>('none', 'iso14253Default', 'expanded'),
        (v, lower, upper, u, guard) => {
          const result = decide(v, { lower, upper }, u, guard);
          if (result.ok) {
            expect(result.value.conformance).toBeGreaterThanOrEqual(0);
            expect(result.value.conformance).toBeLessThanOrEqual(1);
          } else {
            expect(result.error.message).not.toBe('');
          }
          if (Number.isNaN(v)) expect(result.ok).toBe(false);
        },
      ),
    );
    expect(Object.values(guardBands)).toEqual([0, 0.83, 1]);
  });
});
