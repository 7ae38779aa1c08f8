export { Ears, type EarParts, type EarState, type Note } from './ears';
export { deafnessText, type DeafnessReason } from './failure';
export { useEars, type Listening } from './use-ears';
export type { BayNoise } from './protocol';
