import { lognormalQuantile, quantile, seeAll, standardDeviation } from '../statistics';
import { enoughForFit, timeEdges, type StepTimes } from './sections';

const quantilesOf = (minutes: readonly number[]): StepTimes['quantiles'] => {
  const at = (p: number): number | undefined => {
    const found = quantile(minutes, p);
    return found.ok ? found.value : undefined;
  };
  const [p10, p25, p50, p75, p90] = [0.1, 0.25, 0.5, 0.75, 0.9].map(at);
  return p10 === undefined ||
    p25 === undefined ||
    p50 === undefined ||
    p75 === undefined ||
    p90 === undefined
    ? undefined
    : { p10, p25, p50, p75, p90 };
};

/** By the mean and the spread of the logarithms, its maximum-likelihood estimate but for n − 1. */
const lognormalOf = (minutes: readonly number[]): StepTimes['lognormal'] => {
  const positive = minutes.filter((one) => one > 0);
  if (positive.length < enoughForFit) return undefined;
  const seen = seeAll(positive.map(Math.log));
  const sigma = seen.ok ? standardDeviation(seen.value) : seen;
  if (!seen.ok || !sigma.ok) return undefined;
  const fit = { mu: seen.value.mean, sigma: sigma.value };
  return {
    p50: lognormalQuantile(fit, 0.5),
    p80: lognormalQuantile(fit, 0.8),
    p95: lognormalQuantile(fit, 0.95),
  };
};

/** How long the runs of one step took, in minutes, in any order. */
export const stepTimesOf = (
  step: Pick<StepTimes, 'step' | 'stepNumber' | 'stepTitle' | 'bookMinutes'>,
  minutes: readonly number[],
): StepTimes => {
  const quantiles = quantilesOf(minutes);
  const lognormal = lognormalOf(minutes);
  const shares = minutes.map((one) => one / step.bookMinutes);
  return {
    ...step,
    runs: minutes.length,
    ...(quantiles === undefined ? {} : { quantiles }),
    ...(lognormal === undefined ? {} : { lognormal }),
    overBook: minutes.length === 0 ? 0 : shares.filter((share) => share > 1).length / shares.length,
    histogram: timeEdges.map((edge, at) => {
      const next = timeEdges[at + 1] ?? Infinity;
      return shares.filter((share) => share >= edge && share < next).length;
    }),
  };
};
