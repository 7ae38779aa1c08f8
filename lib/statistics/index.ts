export type { StatisticsError } from './error';
export { noneSeen, see, seeAll, standardDeviation, type Running } from './running';
export { quantile } from './quantile';
export {
  chartValue,
  ENOUGH_POINTS,
  individualsChart,
  individualsLimits,
  noIndividuals,
  type IndividualsLimits,
  type IndividualsSoFar,
} from './control-chart';
export { zoneRules, zoneSignals, type ZoneRule, type ZoneSignal } from './western-electric';
export { capability, type Capability, type Estimate } from './capability';
export { lognormalQuantile, type Lognormal } from './lognormal';
export { pareto, type ParetoBar } from './pareto';
export {
  ENOUGH_RUNS,
  estimateTime,
  paceOf,
  unknownPace,
  type Pace,
  type TimeEstimate,
} from './step-time';
export { forecastFinish, type FinishForecast, type StepAhead } from './finish-time';
export { proportion, type Proportion } from './proportion';
