import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  estimateTime,
  forecastFinish,
  paceOf,
  quantile,
  unknownPace,
  type FinishForecast,
  type StepAhead,
} from '@/lib/statistics';
import { normalQuantile } from '@/lib/statistics/normal';

const forecast = (...of: Parameters<typeof forecastFinish>): FinishForecast => {
  const result = forecastFinish(...of);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};
const kind = (result: { ok: true } | { ok: false; error: { kind: string } }) =>
  result.ok ? 'ok' : result.error.kind;

/** Numbers between 0 and 1 from a seed: MINSTD (Park and Miller 1988). */
const seeded = (seed: number) => {
  let state = seed;
  return (): number => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
};

describe('the time of a step', () => {
  it('is the median, and the 80th percentile for a slow one', () => {
    expect(estimateTime([5, 1, 3, 2, 4])).toEqual({
      ok: true,
      value: { typical: 3, slow: 4.2, runs: 5 },
    });
  });

  it('is not moved by one job left standing overnight', () => {
    expect(estimateTime([5, 6, 5, 6, 5, 6, 900])).toMatchObject({ value: { typical: 6, slow: 6 } });
  });

  it('is unknown without times', () => {
    expect(kind(estimateTime([]))).toBe('tooFew');
    expect(kind(estimateTime([1, -1]))).toBe('outOfDomain');
    expect(kind(estimateTime([1, Number.NaN]))).toBe('notANumber');
    expect(kind(quantile([1, 2], 1.1))).toBe('outOfDomain');
    expect(kind(quantile([1, 2], Number.NaN))).toBe('outOfDomain');
  });
});

describe('the pace', () => {
  it('is the times over the book, once five steps are done', () => {
    const done = [1, 1.2, 0.8, 1.5, 1.1].map((ratio) => ({ minutes: 10 * ratio, bookMinutes: 10 }));
    const pace = paceOf(done);
    expect(pace.ok && pace.value.typical).toBeCloseTo(1.1, 12);
    expect(pace.ok && pace.value.slow).toBeCloseTo(1.26, 12);
    expect(paceOf(done.slice(1))).toEqual({ ok: true, value: unknownPace });
    expect(kind(paceOf([{ minutes: 1, bookMinutes: 0 }]))).toBe('outOfDomain');
  });
});

describe('the finishing time', () => {
  const steady = (bookMinutes: number): StepAhead => ({ bookMinutes, history: [] });

  it('is about the book time of what is left, where nothing else is known', () => {
    const { typicalMinutes, safeMinutes, from } = forecast([steady(10)], unknownPace);
    expect(typicalMinutes).toBeCloseTo(10, 9);
    expect(safeMinutes).toBeCloseTo(15, 9);
    expect(from).toBe('book');
  });

  it('takes history before the book', () => {
    const history = [20, 21, 19, 20, 22];
    expect(forecast([{ bookMinutes: 5, history }], unknownPace)).toMatchObject({ from: 'history' });
    expect(forecast([{ bookMinutes: 5, history }], unknownPace).typicalMinutes).toBeCloseTo(20, 9);
    expect(forecast([{ bookMinutes: 5, history: [20] }], unknownPace)).toMatchObject({
      from: 'book',
    });
    expect(forecast([{ bookMinutes: 5, history }, steady(5)], unknownPace).from).toBe('both');
  });

  it('is bounded more closely by many steps than by one of the same length', () => {
    const many = forecast(
      Array.from({ length: 10 }, () => steady(6)),
      unknownPace,
    );
    const one = forecast([steady(60)], unknownPace);
    const slack = ({ typicalMinutes, safeMinutes }: FinishForecast) => safeMinutes / typicalMinutes;
    expect(slack(many)).toBeLessThan(slack(one));
  });

  it('moves out, never into the past, while a step runs over', () => {
    const running = (spentMinutes: number) =>
      forecast([{ bookMinutes: 10, history: [], spentMinutes }], unknownPace);
    expect(running(5).typicalMinutes).toBeLessThan(10);
    expect(running(40).typicalMinutes).toBeGreaterThan(0);
    expect(40 + running(40).typicalMinutes).toBeGreaterThan(20 + running(20).typicalMinutes);
    expect(running(100_000).typicalMinutes).toBeGreaterThan(0);
  });

  it('is now when nothing is left', () => {
    expect(forecast([], unknownPace)).toEqual({
      typicalMinutes: 0,
      safeMinutes: 0,
      from: 'nothingLeft',
    });
  });

  it('is refused for what are no times', () => {
    expect(kind(forecastFinish([steady(0)], unknownPace))).toBe('outOfDomain');
    expect(kind(forecastFinish([steady(Number.NaN)], unknownPace))).toBe('outOfDomain');
    expect(kind(forecastFinish([{ ...steady(1), spentMinutes: -1 }], unknownPace))).toBe(
      'outOfDomain',
    );
    expect(kind(forecastFinish([steady(1)], { typical: 2, slow: 1 }))).toBe('outOfDomain');
    expect(
      kind(forecastFinish([{ bookMinutes: 1, history: [1, 2, 3, 4, Number.NaN] }], unknownPace)),
    ).toBe('notANumber');
  });

  it('holds four times in five, and the typical one half the time', () => {
    const random = seeded(4711);
    const time = (median: number): number => median * Math.exp(0.45 * normalQuantile(random()));
    const medians = [4, 12, 6, 25, 3, 8, 8, 15, 5, 10, 2, 7];
    const jobs = 1500;
    let typical = 0;
    let safe = 0;
    for (let job = 0; job < jobs; job += 1) {
      const steps = medians.map((median) => ({
        bookMinutes: 1,
        history: Array.from({ length: 40 }, () => time(median)),
      }));
      const told = forecast(steps, unknownPace);
      const took = medians.reduce((sum, median) => sum + time(median), 0);
      if (took <= told.typicalMinutes) typical += 1;
      if (took <= told.safeMinutes) safe += 1;
    }
    expect(typical / jobs).toBeGreaterThan(0.45);
    expect(typical / jobs).toBeLessThan(0.6);
    expect(safe / jobs).toBeGreaterThan(0.76);
    expect(safe / jobs).toBeLessThan(0.86);
  });

  it('is never NaN and never a throw, whatever the numbers', () => {
    const any = fc.oneof(fc.double(), fc.double({ min: 0, max: 1e4, noNaN: true }));
    fc.assert(
      fc.property(
        fc.array(fc.record({ bookMinutes: any, history: fc.array(any), spentMinutes: any })),
        any,
        any,
        (steps, typical, slow) => {
          const result = forecastFinish(steps, { typical, slow });
          if (!result.ok) return;
          expect(result.value.typicalMinutes).toBeGreaterThanOrEqual(0);
          expect(result.value.safeMinutes).toBeGreaterThanOrEqual(result.value.typicalMinutes);
          expect(Number.isFinite(result.value.safeMinutes)).toBe(true);
        },
      ),
      { numRuns: 300 },
    );
  });
});
