import { quantile } from './hearing-score';

/** A quantile of measured times for people, or a dash where nothing was measured. */
export const quantileText = (
  tookMs: readonly number[],
  share: number,
  decimals: number,
): string => {
  const ms = quantile(tookMs, share);
  return ms === undefined ? '–' : `${ms.toFixed(decimals)} ms`;
};
