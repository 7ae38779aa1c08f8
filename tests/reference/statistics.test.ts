import { describe, it } from 'vitest';
import {
  capability,
  individualsChart,
  quantile,
  seeAll,
  standardDeviation,
  zoneSignals,
} from '@/lib/statistics';
import { lognormalOf, lognormalQuantile, remaining } from '@/lib/statistics/lognormal';
import { normalQuantile } from '@/lib/statistics/normal';
import type { Result } from '@/lib/result';
import table from './data/distributions.json';
import lognormal from './data/lognormal.json';
import { source } from './record';

const nistChart = source(
  'NIST/SEMATECH e-Handbook 6.3.2.2, individuals chart example',
  'from memory',
);
const constants = source('Control chart constants for n = 2', 'printed');
const champ = source('Champ and Woodall 1987, run length of the zone rules', 'from memory');
const nistCapability = source('NIST/SEMATECH e-Handbook 6.1.6, capability example', 'from memory');
const numpy = source('numpy quantile (linear), mean, std (data/distributions.json)', 'computed');
const scipyRest = source(
  'scipy.integrate, rest of a lognormal time (data/lognormal.json)',
  'computed',
);
const monteCarlo = source(
  'numpy, 2 million sums of lognormal times (data/lognormal.json)',
  'computed',
);

const value = <T>(result: Result<T, { readonly message: string }>): T => {
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};
const at = (row: readonly number[], column: number): number => row[column] ?? Number.NaN;

/** Numbers between 0 and 1 from a seed: MINSTD (Park and Miller 1988). */
const seeded = (seed: number) => {
  let state = seed;
  return (): number => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
};

describe('the individuals chart agrees with NIST', () => {
  it('in the worked example', () => {
    const chart = value(
      individualsChart([49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1]),
    );
    nistChart.number('mean', chart.centre, 50.81, { relative: 1e-12 });
    nistChart.number('average moving range', chart.averageMovingRange, 1.8778, { absolute: 5e-5 });
    nistChart.number('lower limit', chart.lower, 45.8159, { absolute: 1e-4 });
    nistChart.number('upper limit', chart.upper, 55.8041, { absolute: 1e-4 });
  });

  it('in the constants', () => {
    // Ranges 1, so that the limits are the constants themselves.
    const chart = value(individualsChart([0, 1, 0, 1]));
    constants.number('2.66', chart.upper - chart.centre, 2.66, { absolute: 5e-3 });
    constants.number('3.267', chart.movingRangeUpper, 3.267, { relative: 1e-12 });
  });

  it('in how seldom the zone rules call a steady process out', () => {
    const random = seeded(20260101);
    let points = 0;
    const runs = 2000;
    for (let run = 0; run < runs; run += 1) {
      const process = Array.from({ length: 60 }, () => normalQuantile(random()));
      let first: number | undefined;
      while (first === undefined) {
        first = value(zoneSignals(process, { centre: 0, sigma: 1 }))[0]?.at;
        if (first === undefined) {
          process.push(...Array.from({ length: process.length }, () => normalQuantile(random())));
        }
      }
      points += first + 1;
    }
    // Standard error of the mean run length of 2000 runs: about 2 %.
    champ.number('average run length', points / runs, 91.75, { relative: 0.06 });
  });
});

describe('capability agrees with NIST', () => {
  it('in the worked example', () => {
    // Mean 16, standard deviation 2, limits 8 and 20.
    const seen = { count: 51, mean: 16, squares: 4 * 50 };
    const { cp, cpk } = value(capability(seen, { lower: 8, upper: 20 }));
    nistCapability.number('Cp', cp?.value ?? Number.NaN, 1, { relative: 1e-12 });
    nistCapability.number('Cpk', cpk.value, 0.6667, { absolute: 5e-5 });
    // χ² with 50 degrees of freedom: 32.357 and 71.420 (common table, from memory).
    nistCapability.number('Cp from', cp?.from ?? Number.NaN, Math.sqrt(32.357 / 50), {
      relative: 1e-5,
    });
    nistCapability.number('Cp to', cp?.to ?? Number.NaN, Math.sqrt(71.42 / 50), { relative: 1e-5 });
    const half = 1.96 * Math.sqrt(1 / (9 * 51) + (2 / 3) ** 2 / 100);
    nistCapability.number('Cpk from', cpk.from, 2 / 3 - half, { relative: 1e-4 });
    nistCapability.number('Cpk to', cpk.to, 2 / 3 + half, { relative: 1e-4 });
  });
});

describe('quantiles and spreads agree with numpy', () => {
  it.each(table.quantile.map((row) => [row.sample.length, row] as const))(
    'for %d values',
    (n, row) => {
      const allowed = { relative: 1e-12 };
      numpy.number('median', value(quantile(row.sample, 0.5)), row.median, allowed);
      numpy.number('80th', value(quantile(row.sample, 0.8)), row.p80, allowed);
      numpy.number('5th', value(quantile(row.sample, 0.05)), row.p05, allowed);
      const seen = value(seeAll(row.sample));
      numpy.number('mean', seen.mean, row.mean, allowed);
      if (n > 1) {
        numpy.number('deviation', value(standardDeviation(seen)), row.sd ?? Number.NaN, allowed);
      }
    },
  );
});

describe('lognormal times agree with scipy and numpy', () => {
  it('in what remains of a time that runs', () => {
    for (const row of lognormal.remaining) {
      const time = { mu: Math.log(at(row, 0)), sigma: at(row, 1) };
      const rest = remaining(time, at(row, 2));
      scipyRest.number(`mean ${row.join(' ')}`, rest.mean, at(row, 3), { relative: 1e-8 });
      scipyRest.number(`variance ${row.join(' ')}`, rest.variance, at(row, 4), { relative: 1e-6 });
    }
  });

  it('in the median and 80th percentile of their sums, within three percent', () => {
    for (const { steps, median, p80 } of lognormal.sums) {
      const moments = steps.map((step) =>
        remaining({ mu: Math.log(at(step, 0)), sigma: at(step, 1) }, 0),
      );
      const total = lognormalOf({
        mean: moments.reduce((sum, { mean }) => sum + mean, 0),
        variance: moments.reduce((sum, { variance }) => sum + variance, 0),
      });
      const name = `${String(steps.length)} steps`;
      monteCarlo.number(name, lognormalQuantile(total, 0.5), median, { relative: 0.03 });
      monteCarlo.number(name, lognormalQuantile(total, 0.8), p80, { relative: 0.03 });
    }
  });
});
