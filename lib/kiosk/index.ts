export * from './act';
export type * from './state';
export { kioskTransition, openKiosk } from './transition';
export { voiceContext } from './voice-context';
export { spokenFigure, verdictText } from './values';
export { allWants, currentStep, openWants, orderedFasteners, wantLabel } from './wanted';
export type { Want } from './wanted';
export { openEndsText } from './moves';
