export {
  beginOwnSpeech,
  hearOwnVoice,
  unknownOwnVoice,
  usualBargeInRules,
  type BargeInRules,
  type OwnVoice,
} from './barge-in';
export {
  silent,
  speakNext,
  staleAfterMs,
  type Speaking,
  type SpeakingEffect,
  type SpeakingInput,
  type SpeakingStep,
} from './queue';
export { toolRuns } from './tool-runs';
