export * from './specification';
export { checkSpecification } from './check-specification';
export { checkPasses, checkTightening, nominal } from './check-tightening';
export { checkGroupTightening, type GroupFault } from './check-group-tightening';
export type { Fault } from './fault';
export type { OutOfDomain } from './domain';

export { imbalance, roundOrder, tighteningOrder } from './tightening-order';
export type { HolePoint } from './hole';
export { groupOrder, groupRound, passPlan, type GroupOrder, type Round } from './group-order';
export { proposePasses, type ProposedPass } from './pass-proposal';

export {
  adapterSchema,
  judgeAtFastener,
  setTorque,
  torqueAtFastener,
  windowOnWrench,
  type Adapter,
  type AdapterTorque,
  type JudgedAtFastener,
} from './adapter';
export {
  addPrevailing,
  judgeNut,
  type NutProblem,
  type PrevailingProblem,
  type PrevailingTorque,
  type SetWithPrevailing,
} from './prevailing';

export { threadOf, type Thread } from './thread';
export { parseThread, type ThreadProblem } from './parse-thread';
export { proofLoadN, strengthOf, type Strength, type StrengthProblem } from './strength';
export { bearingStressMpa, hexagonBearing, type Bearing } from './bearing';
export { aluminium, requiredEngagementMm, strippingLoadN, type Aluminium } from './engagement';
export {
  assemblyPreloadN,
  preloadByNutFactorN,
  preloadForTorqueN,
  torqueByNutFactorNm,
  torqueForPreloadNm,
  type Friction,
  type Joint,
} from './preload';
export { plausibility, type Plausibility, type PlausibilityProblem } from './plausibility';
export {
  GENERAL_GUIDANCE,
  generalFigure,
  type GeneralFigure,
  type GeneralFigureProblem,
  type GeneralFigureSetting,
  type GeneralJoint,
} from './general-figure';
