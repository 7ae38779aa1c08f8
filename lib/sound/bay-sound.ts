import { soundKinds, type KindScores, type SoundKind } from './kind';
import type { SoundObservation } from './observation';
import { usualSoundRules, type SoundRules } from './rules';

/** Against a voice in this bay: well under it, near it, or so loud that it hides it. */
export type NoiseLevel = 'low' | 'raised' | 'loud';

/** A stretch of the sound that a tool drowned, s. */
export interface LoudSpan {
  readonly startS: number;
  readonly endS: number;
}

/** … and how sure it is at most that somebody spoke in it, 0 to 1. */
export interface LoudStretch extends LoudSpan {
  readonly voice: number;
}

/** What the bay sounds like now, and what has been learnt of it. */
export interface BaySound {
  readonly kind: SoundKind;
  readonly level: NoiseLevel;
  /** Tools take so much of the time that nobody could be heard. */
  readonly unheard: boolean;
  /** When a tool was too loud to trust what was heard; in order, apart from each other, of late only. */
  readonly tooLoud: readonly LoudStretch[];
  /** Learnt levels, dB re full scale: of voices, and of the bay with neither voice nor tool. */
  readonly voiceDb: number | undefined;
  readonly roomDb: number | undefined;
  /** What the last windows say, while it is not yet shown. */
  readonly coming: { readonly kind: SoundKind; readonly windows: number } | undefined;
  /** Where listening began, s. */
  readonly sinceS: number | undefined;
}

export const unknownBay: BaySound = {
  kind: 'quiet',
  level: 'low',
  unheard: false,
  tooLoud: [],
  voiceDb: undefined,
  roomDb: undefined,
  coming: undefined,
  sinceS: undefined,
};

/** Hand tools and alarms: what hides a voice and comes and goes. An engine runs on, and is heard through or not. */
const drowning = ['impactTool', 'grinderOrSaw', 'alarm'] as const;

const toolScore = (scores: KindScores): number => Math.max(...drowning.map((kind) => scores[kind]));

/** From this level a tool is too loud to be heard through, dB re full scale. */
export const tooLoudDb = (
  { voiceDb, roomDb }: Pick<BaySound, 'voiceDb' | 'roomDb'>,
  rules: SoundRules = usualSoundRules,
): number => {
  if (voiceDb !== undefined) return voiceDb - rules.underVoiceDb;
  return roomDb === undefined ? rules.loudDb : roomDb + rules.overRoomDb;
};

/** The kind of the highest score; quiet where none is sure. A tool under speech is still the tool: speech is heard anyway. */
const leadingKind = (scores: KindScores, { scoreOn }: SoundRules): SoundKind => {
  const sure = soundKinds.filter((kind) => kind !== 'quiet' && scores[kind] >= scoreOn);
  return sure.reduce<SoundKind>(
    (best, kind) => (best === 'quiet' || scores[kind] > scores[best] ? kind : best),
    'quiet',
  );
};

const learn = (known: number | undefined, levelDb: number, share: number): number =>
  known === undefined ? levelDb : known + share * (levelDb - known);

const learnt = (bay: BaySound, { scores, levelDb }: SoundObservation, rules: SoundRules) => {
  const tool = toolScore(scores);
  const half = rules.scoreOn / 2;
  const voice = scores.speech >= rules.scoreOn && tool < half && scores.musicOrRadio < half;
  const room = scores.speech < half && tool < half;
  return {
    voiceDb: voice ? learn(bay.voiceDb, levelDb, rules.learning) : bay.voiceDb,
    roomDb: room ? learn(bay.roomDb, levelDb, rules.learning) : bay.roomDb,
  };
};

const withStretch = (known: readonly LoudStretch[], next: LoudStretch): readonly LoudStretch[] => {
  const last = known.at(-1);
  if (last === undefined || next.startS > last.endS) return [...known, next];
  const joined = {
    startS: last.startS,
    endS: Math.max(last.endS, next.endS),
    voice: Math.max(last.voice, next.voice),
  };
  return [...known.slice(0, -1), joined];
};

const drowns = (
  bay: BaySound,
  { scores, levelDb }: SoundObservation,
  rules: SoundRules,
): boolean => {
  const tool = toolScore(scores);
  return tool >= rules.scoreOn && tool > scores.speech && levelDb >= tooLoudDb(bay, rules);
};

const sharesOf = (spans: readonly LoudSpan[], fromS: number, toS: number): number =>
  spans.reduce((sum, span) => sum + Math.max(0, span.endS - Math.max(fromS, span.startS)), 0) /
  (toS - fromS);

const levelOf = (levelDb: number, bay: BaySound, rules: SoundRules): NoiseLevel => {
  const loudDb = tooLoudDb(bay, rules);
  return levelDb >= loudDb ? 'loud' : levelDb >= loudDb - 10 ? 'raised' : 'low';
};

const shownKind = (
  bay: BaySound,
  kind: SoundKind,
  { windowsToChange }: SoundRules,
): Pick<BaySound, 'kind' | 'coming'> => {
  if (kind === bay.kind) return { kind, coming: undefined };
  const windows = bay.coming?.kind === kind ? bay.coming.windows + 1 : 1;
  return windows >= windowsToChange
    ? { kind, coming: undefined }
    : { kind: bay.kind, coming: { kind, windows } };
};

/** One more window of sound, in the order of time. */
export const hearBay = (
  bay: BaySound,
  window: SoundObservation,
  rules: SoundRules = usualSoundRules,
): BaySound => {
  if (!(window.endS > window.startS) || !Number.isFinite(window.levelDb)) return bay;
  const sinceS = bay.sinceS ?? window.startS;
  const kept = bay.tooLoud.filter(({ endS }) => endS > window.endS - rules.lookBackS);
  const tooLoud = drowns(bay, window, rules)
    ? withStretch(kept, { startS: window.startS, endS: window.endS, voice: window.scores.speech })
    : kept;
  const fromS = window.endS - rules.lookBackS;
  const share = sharesOf(tooLoud, fromS, window.endS);
  const known = window.endS - sinceS >= rules.lookBackS / 2;
  return {
    ...shownKind(bay, leadingKind(window.scores, rules), rules),
    ...learnt(bay, window, rules),
    level: levelOf(window.levelDb, bay, rules),
    unheard: bay.unheard ? share >= rules.heardAgainShare : known && share > rules.unheardShare,
    tooLoud,
    sinceS,
  };
};

/**
 * What is to be done with what was heard at that time: trusted; dropped because a tool hid it, which the speaker is
 * told; or dropped without a word because only the tool was there.
 */
export type Trust = 'trusted' | 'tooLoud' | 'toolOnly';

export const trustIn = (
  bay: BaySound,
  said: LoudSpan,
  { voiceTrace }: SoundRules = usualSoundRules,
): Trust => {
  const over = bay.tooLoud.filter(({ startS, endS }) => startS < said.endS && said.startS < endS);
  if (over.length === 0) return 'trusted';
  return over.some(({ voice }) => voice >= voiceTrace) ? 'tooLoud' : 'toolOnly';
};
