/** How scores and levels become what is shown and what is trusted. Chosen on made sounds; no source. */
export interface SoundRules {
  /** A kind counts from this score. */
  readonly scoreOn: number;
  /** From this score of speech somebody may have spoken under a tool. */
  readonly voiceTrace: number;
  /** So many windows in a row must say the same before the shown kind changes. */
  readonly windowsToChange: number;
  /** A tool this much below a voice in this bay still hides it. */
  readonly underVoiceDb: number;
  /** Before a voice has been heard: so much over the room is loud … */
  readonly overRoomDb: number;
  /** … and before the room is known, this level, dB re full scale. */
  readonly loudDb: number;
  /** How quickly voice and room are learnt: the share of each new window. */
  readonly learning: number;
  /** The time that is looked back over to say whether the bay can be heard at all, s. */
  readonly lookBackS: number;
  /** It cannot when tools take more than this share of it, and can again below the other. */
  readonly unheardShare: number;
  readonly heardAgainShare: number;
}

export const usualSoundRules: SoundRules = {
  scoreOn: 0.6,
  voiceTrace: 0.1,
  windowsToChange: 2,
  underVoiceDb: 6,
  overRoomDb: 15,
  loudDb: -35,
  learning: 0.2,
  lookBackS: 30,
  unheardShare: 0.6,
  heardAgainShare: 0.3,
};
