import type { ReviewMeasures } from './bench-review';
import { quantileText } from './bench-times';

const quantile = (tookMs: readonly number[], share: number): string =>
  quantileText(tookMs, share, 1);

const thousands = (count: number): string => count.toLocaleString('en');

export const reviewText = ({
  shop,
  fileMb,
  rows,
  queries,
  rebuild,
  appends,
}: ReviewMeasures): string =>
  [
    `The review over ${thousands(shop.events)} events of ${thousands(shop.jobs)} jobs in ${shop.bays} bays, ${shop.from} to ${shop.to}`,
    `  made in ${shop.fillS.toFixed(0)} s, ${fileMb.toFixed(0)} MB: the demo’s seeded month in each bay, and ${shop.months - 1} times before it, with ids, bays`,
    '  and times of their own. Events, chain and review rows are stored as the app stores them; the rules judged each job of',
    '  the month once, not each copy. One connection; what the system keeps of the file in memory is kept between rounds.',
    `  rows: ${Object.entries(rows)
      .map(([table, count]) => `${table} ${thousands(count)}`)
      .join(', ')}`,
    ...queries.flatMap(({ name, tookMs, plan }) => [
      `  ${name.padEnd(30)} p50 ${quantile(tookMs, 0.5).padStart(9)}, p95 ${quantile(tookMs, 0.95).padStart(9)} (n = ${tookMs.length})`,
      ...plan.map((line) => `      ${line}`),
    ]),
    `  made anew from the events       ${thousands(rebuild.events)} events of ${rebuild.jobs} jobs in ${rebuild.tookS.toFixed(1)} s, and the same rows came of it;`,
    `                                  at that pace all of them take ${(((shop.events / rebuild.events) * rebuild.tookS) / 60).toFixed(1)} min in the background`,
    `  one event stored by touch       p50 ${quantile(appends.touchedMs, 0.5)}, p95 ${quantile(appends.touchedMs, 0.95)}; the same spoken, and so counted as heard,`,
    `                                  p50 ${quantile(appends.spokenMs, 0.5)}, p95 ${quantile(appends.spokenMs, 0.95)} (n = ${appends.spokenMs.length} each)`,
  ].join('\n');
