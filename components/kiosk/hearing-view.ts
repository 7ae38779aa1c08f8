import type { EarState } from '../microphone';
import type { HearingView } from './hearing-badge';
import { soundView } from './sound-words';

/** What the ears are kept from doing, or are doing for something else than phrases. */
export type EarDuty = 'phrases' | 'speaking' | 'reason';

const quietDb = -62;
const loudDb = -14;

/** Level of what comes in as a share of the meter: speech at arm's length fills about two thirds. */
export const levelShare = (levelDb: number): number =>
  Math.min(1, Math.max(0, (levelDb - quietDb) / (loudDb - quietDb)));

/** The ears as the header shows them; `callWord`: what a phrase must begin with. */
export const hearingView = (state: EarState, duty: EarDuty, callWord?: string): HearingView => {
  switch (state.kind) {
    case 'off':
      return { ears: 'off', level: 0, text: 'Not listening' };
    case 'loading': {
      const progress = state.total > 0 ? state.loaded / state.total : 0;
      return {
        ears: 'loading',
        level: 0,
        text:
          progress < 1 ? `Loading voice, ${Math.floor(progress * 100)} %` : 'Making the ears ready',
        progress,
      };
    }
    case 'failed':
      return { ears: 'failed', level: 0, text: 'Cannot hear' };
    case 'listening': {
      if (duty === 'speaking') return { ears: 'waiting', level: 0, text: 'Speaking' };
      const sound = soundView(state.noise);
      return {
        ears: 'listening',
        level: levelShare(state.levelDb),
        text:
          duty === 'reason'
            ? 'Taking the reason'
            : callWord === undefined
              ? 'Listening'
              : `Listening for “${callWord}”`,
        ...(sound === undefined ? {} : { sound }),
      };
    }
  }
};
