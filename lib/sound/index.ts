export {
  hearBay,
  tooLoudDb,
  trustIn,
  unknownBay,
  type BaySound,
  type LoudSpan,
  type NoiseLevel,
  type Trust,
} from './bay-sound';
export { kindScores, noScores, soundKinds } from './kind';
export type { KindScores, KindTable, SoundKind } from './kind';
export { heldDb, type SoundObservation } from './observation';
export { usualSoundRules, type SoundRules } from './rules';
