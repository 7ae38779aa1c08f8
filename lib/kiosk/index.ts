export * from './act';
export { validIntents } from './valid-intents';
export type * from './state';
export { holdWords, kioskTransition, openKiosk } from './transition';
export { voiceContext } from './voice-context';
export { spokenFigure } from './draft';
export { allWants, currentStep, openWants, orderedFasteners, wantLabel } from './wanted';
export type { Want } from './wanted';
export { openEndsText } from './moves';
export { coolantMixes, type CoolantMix } from './coolant';
export { toolsForStep, type ToolCabinet } from './torque-tool';
export { generalForGroup } from './general-for-group';
export {
  setOnWrench,
  wrenchesForAdapter,
  type SetOnWrench,
  type WrenchForAdapter,
} from './adapter-in-use';
