export { wantKinds, type BayCard, type JobCard, type Want, type WantKind } from './card';
export { bayCard, type BayFacts } from './make-card';
export { finishOf, type StepTimes } from './finish';
export { jobWants, mostPressingFirst, whoNeedsSomebody, type BayWant } from './wants';
export { offlineAfterMs, offlineSinceMs, presenceEveryMs, type Presence } from './presence';
export {
  beatEveryMs,
  parsePosition,
  positionText,
  wallMessageSchema,
  type Position,
  type WallMessage,
} from './message';
export { cardsInOrder, emptyWall, hearMessage, type WallState } from './wall-state';
export { freshness, pauseBeforeMs, stalledAfterMs, type Freshness } from './freshness';
export { gridFor, mostBays, type Grid } from './grid';
export { ageWords, endWords, shortBayNames, wantWord, wantWords } from './words';
