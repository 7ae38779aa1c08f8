import { describe, it } from 'vitest';
import { chiSquareCdf, chiSquareQuantile, logGamma } from '@/lib/statistics/chi-square';
import { erf, erfc, normalCdf, normalQuantile } from '@/lib/statistics/normal';
import table from './data/distributions.json';
import { source } from './record';

const scipy = source('scipy.special and scipy.stats (data/distributions.json)', 'computed');

type Row = readonly number[];
const [X, Y, Z] = [0, 1, 2] as const;
const at = (row: Row, column: number): number => row[column] ?? Number.NaN;

describe('distributions agree with scipy', () => {
  it.each([
    ['erf', erf, table.erf, 1e-14],
    ['erfc', erfc, table.erfc, 1e-13],
    ['normal cdf', normalCdf, table.normalCdf, 1e-13],
    ['normal quantile', normalQuantile, table.normalQuantile, 1e-13],
    ['ln Γ', logGamma, table.logGamma, 1e-13],
  ] as const)('%s', (name, of, rows, relative) => {
    for (const row of rows) {
      const [x, published] = [at(row, X), at(row, Y)];
      const allowance = published === 0 ? { absolute: 1e-15 } : { relative };
      scipy.number(`${name}(${String(x)})`, of(x), published, allowance);
    }
  });

  it.each([
    ['chi-square cdf', chiSquareCdf, table.chiSquareCdf],
    ['chi-square quantile', chiSquareQuantile, table.chiSquareQuantile],
  ] as const)('%s', (name, of, rows) => {
    for (const row of rows) {
      const [x, freedom, published] = [at(row, X), at(row, Y), at(row, Z)];
      scipy.number(`${name}(${String(x)}, ${String(freedom)})`, of(x, freedom), published, {
        relative: 1e-11,
      });
    }
  });
});
