export * from './specification';
export { imbalance, roundOrder, tighteningOrder } from './tightening-order';
export type { HolePoint } from './hole';
export { groupOrder, groupRound, passPlan, type GroupOrder, type Round } from './group-order';
export { proposePasses, type ProposedPass } from './pass-proposal';
