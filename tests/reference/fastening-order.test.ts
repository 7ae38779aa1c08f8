import { expect, it } from 'vitest';
import { tighteningOrder } from '@/lib/fastening';
import { source } from './record';

const pcc = source('ASME PCC-1, legacy cross patterns', 'from memory');

const flange = (bolts: number) =>
  Array.from({ length: bolts }, (_, k) => ({
    id: String(k + 1),
    xMm: 100 * Math.sin((2 * Math.PI * k) / bolts),
    yMm: -100 * Math.cos((2 * Math.PI * k) / bolts),
  }));

// For 28 bolts the standard, as remembered, takes the quarters in another turn (1, 4, 6, 2, 5, 3, 7) than the rule
// that gives all others (1, 4, 7, 3, 6, 2, 5), which is what we keep to.
it.each([
  [4, '1-3-2-4'],
  [8, '1-5-3-7-2-6-4-8'],
  [12, '1-7-4-10-2-8-5-11-3-9-6-12'],
  [16, '1-9-5-13-3-11-7-15-2-10-6-14-4-12-8-16'],
  [20, '1-11-6-16-3-13-8-18-5-15-10-20-2-12-7-17-4-14-9-19'],
  [24, '1-13-7-19-4-16-10-22-2-14-8-20-5-17-11-23-3-15-9-21-6-18-12-24'],
  [32, '1-17-9-25-5-21-13-29-3-19-11-27-7-23-15-31-2-18-10-26-6-22-14-30-4-20-12-28-8-24-16-32'],
])('takes the %i bolts of a flange crosswise as the standard does', (bolts, order) => {
  pcc.exactly(`${bolts} bolts`, tighteningOrder(flange(bolts)).join('-'), order);
  expect.hasAssertions();
});
