export * from './act';
export { validIntents } from './valid-intents';
export type * from './state';
export { kioskTransition, openKiosk } from './transition';
export { voiceContext } from './voice-context';
export { spokenFigure, verdictText } from './draft';
export { allWants, currentStep, openWants, orderedFasteners, wantLabel } from './wanted';
export type { Want } from './wanted';
export { openEndsText } from './moves';
