export * from './event';
export type * from './state';
export { dependents } from '../procedure/lookup';
export { applyEvent, replay } from './apply-event';
export {
  askedEach,
  askedGroup,
  askSpecification,
  currentEntries,
  decisionRuleFor,
  openAsks,
  verdictFor,
  type OpenAsk,
} from './asks';
export { spentMs } from './clock';
export { canBegin, canDo, nextStep, openPrerequisites } from './may-do';
export { openJob } from './open-job';
