/** How somebody who speaks near the microphone is told from the kiosk's own voice. Our choices, no source. */
export interface BargeInRules {
  /** So much louder than the kiosk's own voice, dB … */
  readonly overOwnDb: number;
  /** … for so many frames of 20 ms in a row. */
  readonly onsetFrames: number;
  /** The own voice is learnt from so many frames before anything counts. */
  readonly learnFrames: number;
  /** What is softer is no voice, dB re full scale. */
  readonly leastDb: number;
  /** How quickly the learnt level rises and falls, dB a frame: slower than a voice begins. */
  readonly riseDb: number;
  readonly fallDb: number;
}

export const usualBargeInRules: BargeInRules = {
  overOwnDb: 8,
  onsetFrames: 8,
  learnFrames: 50,
  leastDb: -55,
  riseDb: 0.3,
  fallDb: 0.02,
};

/** What is known of the kiosk's own voice at its microphone; kept from one speech to the next. */
export interface OwnVoice {
  readonly levelDb: number | undefined;
  readonly learnt: number;
  readonly smoothDb: number;
  readonly louder: number;
  /** Somebody has begun to speak near the microphone. */
  readonly onset: boolean;
}

export const unknownOwnVoice: OwnVoice = {
  levelDb: undefined,
  learnt: 0,
  smoothDb: -100,
  louder: 0,
  onset: false,
};

/** Before each speech: nobody speaks, what is known of the own voice stays. */
export const beginOwnSpeech = (own: OwnVoice): OwnVoice => ({
  ...own,
  smoothDb: -100,
  louder: 0,
  onset: false,
});

/** One frame of sound while the kiosk speaks. */
export const hearOwnVoice = (
  own: OwnVoice,
  frameDb: number,
  rules: BargeInRules = usualBargeInRules,
): OwnVoice => {
  const smoothDb = Math.max(frameDb, -100) * 0.4 + own.smoothDb * 0.6;
  if (smoothDb < rules.leastDb) return { ...own, smoothDb, louder: 0, onset: false };
  const known = own.learnt >= rules.learnFrames;
  if (known && own.levelDb !== undefined && smoothDb > own.levelDb + rules.overOwnDb) {
    const louder = own.louder + 1;
    return { ...own, smoothDb, louder, onset: louder >= rules.onsetFrames };
  }
  const before = own.levelDb ?? smoothDb;
  const levelDb = known
    ? Math.min(Math.max(smoothDb, before - rules.fallDb), before + rules.riseDb)
    : Math.max(smoothDb, before);
  return { levelDb, learnt: own.learnt + 1, smoothDb, louder: 0, onset: false };
};
