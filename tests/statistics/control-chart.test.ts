import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  capability,
  chartValue,
  individualsChart,
  individualsLimits,
  noIndividuals,
  pareto,
  seeAll,
  standardDeviation,
  zoneSignals,
  type IndividualsSoFar,
} from '@/lib/statistics';

const kind = (result: { ok: true } | { ok: false; error: { kind: string } }) =>
  result.ok ? 'ok' : result.error.kind;

describe('the individuals chart', () => {
  it('has its limits from the moving ranges', () => {
    expect(individualsChart([10, 12, 10, 12])).toEqual({
      ok: true,
      value: {
        points: 4,
        centre: 11,
        averageMovingRange: 2,
        sigma: 2 / 1.128,
        lower: 11 - 6 / 1.128,
        upper: 11 + 6 / 1.128,
        movingRangeUpper: 3.267 * 2,
        preliminary: true,
      },
    });
  });

  it('is preliminary below twenty points', () => {
    const chart = (points: number) =>
      individualsChart(Array.from({ length: points }, (_, i) => i % 3));
    expect(chart(19)).toMatchObject({ value: { preliminary: true } });
    expect(chart(20)).toMatchObject({ value: { preliminary: false } });
  });

  it('is the same value by value as all at once', () => {
    const values = [3.1, 2.9, 3.3, 3.0, 3.2];
    let soFar: IndividualsSoFar = noIndividuals;
    for (const value of values) {
      const next = chartValue(soFar, value);
      if (next.ok) soFar = next.value;
    }
    expect(individualsLimits(soFar)).toEqual(individualsChart(values));
  });

  it('needs two numbers', () => {
    expect(kind(individualsChart([]))).toBe('tooFew');
    expect(kind(individualsChart([1]))).toBe('tooFew');
    expect(kind(individualsChart([1, Number.NaN]))).toBe('notANumber');
    expect(kind(individualsChart([1, Number.POSITIVE_INFINITY]))).toBe('notANumber');
    expect(kind(individualsChart([-1.7e308, 1.7e308]))).toBe('outOfDomain');
  });
});

describe('the zone rules', () => {
  const signals = (values: readonly number[]) => {
    const result = zoneSignals(values, { centre: 0, sigma: 1 });
    return result.ok
      ? result.value.map(({ at, rule, side }) => `${at} ${rule} ${side}`)
      : result.error;
  };

  it('call out a point beyond three sigma, on the limit not', () => {
    expect(signals([0.5, 3.1])).toEqual(['1 beyondThree above']);
    expect(signals([0.5, 3])).toEqual([]);
    expect(signals([0.5, -3.1])).toEqual(['1 beyondThree below']);
  });

  it('call out two of three beyond two sigma on one side', () => {
    expect(signals([2.1, 0.1, 2.1])).toEqual(['2 twoOfThree above']);
    expect(signals([2.1, 0.1, -2.1])).toEqual([]);
    expect(signals([2.1, 0.1, 0.1, 2.1])).toEqual([]);
  });

  it('call out four of five beyond one sigma on one side', () => {
    expect(signals([-1.1, -1.1, 0.2, -1.1, -1.1])).toEqual(['4 fourOfFive below']);
    expect(signals([-1.1, -1.1, 0.2, 0.2, -1.1, -1.1])).toEqual([]);
  });

  it('call out eight in a row on one side', () => {
    expect(signals([0.1, 0.2, 0.1, 0.2, 0.1, 0.2, 0.1, 0.2])).toEqual(['7 eightInARow above']);
    expect(signals([0.1, 0.2, 0.1, 0, 0.1, 0.2, 0.1, 0.2])).toEqual([]);
  });

  it('say nothing of a point that breaks off a pattern', () => {
    expect(signals([2.1, 2.1, 0.1])).toEqual(['1 twoOfThree above']);
  });

  it('call out any change where there was no spread', () => {
    const result = zoneSignals([5, 5, 6], { centre: 5, sigma: 0 });
    expect(result.ok && result.value.map(({ rule }) => rule)).toEqual(['beyondThree']);
  });

  it('need a chart and numbers', () => {
    expect(kind(zoneSignals([1], { centre: Number.NaN, sigma: 1 }))).toBe('outOfDomain');
    expect(kind(zoneSignals([1], { centre: 0, sigma: -1 }))).toBe('outOfDomain');
    expect(kind(zoneSignals([Number.NaN], { centre: 0, sigma: 1 }))).toBe('notANumber');
  });
});

describe('capability', () => {
  const seen = (values: readonly number[]) => {
    const result = seeAll(values);
    if (!result.ok) throw new Error(result.error.message);
    return result.value;
  };
  const readings = [118, 121, 119, 122, 120, 120, 117, 123];

  it('is Cp and Cpk with the interval that the number of readings allows', () => {
    const result = capability(seen(readings), { lower: 108, upper: 132 });
    // s = 2, so Cp = 24/12 and the mean is in the middle.
    expect(result).toMatchObject({ ok: true, value: { cp: { value: 2 }, cpk: { value: 2 } } });
    const many = capability(seen([...readings, ...readings, ...readings]), {
      lower: 108,
      upper: 132,
    });
    if (!result.ok || !many.ok) throw new Error('capable');
    const width = ({ from, to }: { from: number; to: number }) => to - from;
    expect(width(many.value.cpk)).toBeLessThan(width(result.value.cpk));
  });

  it('is Cpk alone where there is one limit', () => {
    const result = capability(seen(readings), { lower: 108 });
    expect(result).toMatchObject({ ok: true, value: { cpk: { value: 2 } } });
    expect(result.ok && result.value.cp).toBeUndefined();
  });

  it('is refused without spread, limits or enough readings', () => {
    const limits = { lower: 108, upper: 132 };
    expect(kind(capability(seen([120]), limits))).toBe('tooFew');
    expect(kind(capability(seen([120, 120]), limits))).toBe('outOfDomain');
    expect(kind(capability(seen(readings), {}))).toBe('outOfDomain');
    expect(kind(capability(seen(readings), { lower: 132, upper: 108 }))).toBe('outOfDomain');
    expect(kind(capability(seen(readings), limits, 1))).toBe('outOfDomain');
    expect(kind(capability(seen(readings), { lower: Number.NaN }))).toBe('outOfDomain');
  });
});

describe('a Pareto list', () => {
  it('has the largest first, with shares that add up', () => {
    expect(
      pareto([
        ['order changed', 1],
        ['out of spec', 5],
        ['left out', 1],
        ['out of spec', 3],
      ]),
    ).toEqual({
      ok: true,
      value: [
        { name: 'out of spec', count: 8, share: 0.8, cumulative: 0.8 },
        { name: 'left out', count: 1, share: 0.1, cumulative: 0.9 },
        { name: 'order changed', count: 1, share: 0.1, cumulative: 1 },
      ],
    });
  });

  it('is empty for nothing, and refuses what is no count', () => {
    expect(pareto([])).toEqual({ ok: true, value: [] });
    expect(pareto([['a', 0]])).toMatchObject({ value: [{ share: 0, cumulative: 0 }] });
    expect(kind(pareto([['a', Number.NaN]]))).toBe('notANumber');
    expect(kind(pareto([['a', -1]]))).toBe('notANumber');
  });
});

describe('statistics', () => {
  it('do not lose a small spread on a large mean', () => {
    const result = seeAll([1e9 + 4, 1e9 + 7, 1e9 + 13, 1e9 + 16]);
    const spread = result.ok ? standardDeviation(result.value) : result;
    // Squared deviations 36, 9, 9, 36 over three.
    expect(spread.ok && spread.value).toBeCloseTo(Math.sqrt(30), 6);
  });

  it('are never NaN and never a throw, whatever the numbers', () => {
    const any = fc.double();
    fc.assert(
      fc.property(fc.array(any), any, any, any, (values, a, b, c) => {
        const seen = seeAll(values);
        const results = [
          individualsChart(values),
          zoneSignals(values, { centre: a, sigma: b }),
          pareto(values.map((value, i) => [String(i), value])),
          seen.ok ? capability(seen.value, { lower: a, upper: b }, c) : seen,
          seen.ok ? capability(seen.value, { lower: a }) : seen,
        ];
        for (const result of results) {
          if (values.some(Number.isNaN)) expect(result.ok).toBe(false);
          // JSON has no NaN or infinity: both would show as null.
          if (result.ok) expect(JSON.stringify(result.value)).not.toMatch(/null/);
        }
      }),
    );
  });
});
