export {
  mostAtOnce,
  openOutbox,
  outboxTransition,
  type Delivery,
  type Outbox,
  type OutboxEffect,
  type OutboxInput,
  type OutboxStep,
} from './outbox';
export { onTopOf, type OnTop } from './on-top-of';
export { reconcile, type Conflict, type Reconciled, type StoredJob } from './reconcile';
export { eventWords } from './event-words';
export { notesOf, type SetAside } from './set-aside';
