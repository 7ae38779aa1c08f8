export { HearingsChart } from './hearings-chart';
export { HoldsChart } from './holds-chart';
export type { IndividualPoint, IndividualsFacts } from './individual-point';
export { IndividualsChart } from './individuals-chart';
export { ParetoChart, type ParetoItem } from './pareto-chart';
export { StepTimesChart, type StepTimesRow } from './step-times-chart';
export { DataTable } from './data-table';
