import { usualLevelRules, type LevelRules } from './speech-level';

/** When an utterance is over, and how sound is handed to the recogniser. */
export interface HearingRules {
  readonly level: LevelRules;
  /** So much quiet ends an utterance. */
  readonly pauseMs: number;
  /** Nothing that is said to the kiosk takes longer. */
  readonly longestS: number;
  /** Sound goes to the recogniser in pieces of so many frames of 20 ms. */
  readonly framesPerPiece: number;
}

export const usualHearingRules: HearingRules = {
  level: usualLevelRules,
  pauseMs: 240,
  longestS: 15,
  framesPerPiece: 5,
};
