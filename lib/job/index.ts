export * from './event';
export type * from './state';
export { dependents } from '../procedure/lookup';
export { applyEvent, applyEvents, replay } from './apply-event';
export { writeEvent, writeEvents, type Writing } from './write-events';
export {
  askedEach,
  askedGroup,
  askSpecification,
  currentEntries,
  decisionRuleFor,
  openAsks,
  type OpenAsk,
} from './asks';
export { askedValue, type AskedValue, type Prevailing } from './asked-value';
export { judgeValue } from './judge-value';
export { atFastener, type AtFastener, type ReadValue } from './at-fastener';
export { spentMs } from './clock';
export { capacityL, readSoFarL } from './fluids';
export { lastWorker } from './last-worker';
export { canBegin, canDo, nextStep, openPrerequisites } from './may-do';
export { openJob } from './open-job';
