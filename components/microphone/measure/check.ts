import { everyPhrase, understand, type Heard, type Understanding } from '@/lib/voice';
import { Ears } from '../ears';
import { decodeRecording } from '../recording';
import { sampleRateHz } from '../sound';
import type { Moment } from '../turn';
import { endOfSpeechS, withNoise, withRoom } from './mixture';
import { errorText } from '@/lib/result';

/** One recording to listen to; noise recordings are given by address. */
export interface Trial {
  readonly url: string;
  readonly noise?: { readonly url: string; readonly snrDb: number; readonly seed: number };
}

/** What came of what was said. Times are of the sound as it was fed, s; wall times run from the arrival of the sound needed. */
export interface Outcome {
  readonly understanding: Understanding;
  readonly heard: Heard;
  /** When it could be shown: for a number before it is settled. */
  readonly shownS: number;
  readonly shownComputeMs: number;
  /** When it could act. */
  readonly actedS: number;
  readonly actedComputeMs: number;
}

export interface TrialResult {
  readonly problem?: string;
  readonly durationS: number;
  /** Within the recording as fed; undefined where it cannot be told. */
  readonly endOfSpeechS?: number;
  readonly outcomes: readonly Outcome[];
}

const quietLeadS = 0.3;
/** A bay's noise does not begin with the phrase. */
const noisyLeadS = 2;
const tailS = 3;

let outcomes: Outcome[] = [];
let preview: { readonly ended: Moment; readonly computeMs: number } | undefined;

const sinceMs = ({ arrivedMs }: Moment): number =>
  performance.timeOrigin + performance.now() - arrivedMs;

const states: string[] = [];
/** What the bay sounded like, in order: kind and level, or that no classifier watches. */
const noises: string[] = [];

const ears = new Ears({
  onPreview: (_understanding, _heard, { ended }) => {
    preview = { ended, computeMs: sinceMs(ended) };
  },
  onUnderstood: (understanding, heard, { ended, decided }) => {
    const actedComputeMs = sinceMs(decided);
    outcomes.push({
      understanding,
      heard,
      shownS: ended.atS,
      shownComputeMs: preview?.ended === ended ? preview.computeMs : actedComputeMs,
      actedS: decided.atS,
      actedComputeMs,
    });
  },
});
ears.attend(everyPhrase, 'measuring');
ears.subscribe(() => {
  const { state } = ears;
  const name = state.kind === 'failed' ? state.reason : state.kind;
  if (states.at(-1) !== name) states.push(name);
  if (state.kind !== 'listening' || state.noise === undefined) return;
  const noise =
    state.noise === 'unwatched' ? state.noise : `${state.noise.kind}, ${state.noise.level}`;
  if (noises.at(-1) !== noise) noises.push(noise);
});

const sounds = new Map<string, Promise<Float32Array>>();
const fetchSound = async (url: string): Promise<Float32Array> => {
  const response = await fetch(url);
  if (!response.ok) throw new Error('there is no such file');
  try {
    return await decodeRecording(await response.arrayBuffer());
  } catch {
    throw new Error('it cannot be decoded');
  }
};
const keptSound = (url: string): Promise<Float32Array> => {
  const sound = sounds.get(url) ?? fetchSound(url);
  sounds.set(url, sound);
  return sound;
};

/** Loads the model; tells how long that took, ms. */
const load = async (): Promise<number> => {
  const began = performance.now();
  await ears.listenTo(new Float32Array(sampleRateHz / 10));
  if (ears.state.kind === 'failed') throw new Error(ears.state.text);
  return performance.now() - began;
};

let fedS = 0.1;

/** Listens to one recording to its end: room before, the recording, room after until something has been decided. */
const listen = async (trial: Trial): Promise<TrialResult> => {
  let speech: Float32Array;
  try {
    speech = await fetchSound(trial.url);
  } catch (error) {
    const problem = errorText(error);
    return { problem, durationS: 0, outcomes: [] };
  }
  const leadS = trial.noise === undefined ? quietLeadS : noisyLeadS;
  let sound = withRoom(speech, leadS, tailS);
  if (trial.noise !== undefined) {
    const { url, snrDb, seed } = trial.noise;
    sound = withNoise(sound, speech, await keptSound(url), snrDb, seed);
  }
  outcomes = [];
  const beganS = fedS;
  const speechEndS = leadS + speech.length / sampleRateHz;
  const end = endOfSpeechS(speech);
  const decided = (): boolean =>
    outcomes.some(
      (outcome) => outcome.actedS - beganS >= Math.min(speechEndS, leadS + (end ?? speechEndS)),
    );
  let feds = 0;
  await ears.listenTo(sound, {
    carryOn: () => {
      const go = feds < speechEndS || !decided();
      if (go) feds += 0.1;
      return go;
    },
  });
  fedS += Math.min(feds, sound.length / sampleRateHz);
  return {
    durationS: speech.length / sampleRateHz,
    ...(end === undefined ? {} : { endOfSpeechS: end + leadS }),
    outcomes: outcomes.map((outcome) => ({
      ...outcome,
      shownS: outcome.shownS - beganS,
      actedS: outcome.actedS - beganS,
    })),
  };
};

/** What the exact words mean: the reference for what is heard. */
const meaning = (say: string): Understanding =>
  understand(
    {
      text: say,
      words: say
        .split(/\s+/)
        .filter((word) => word !== '')
        .map((text, i) => ({ text, confidence: 1, startS: i, endS: i + 1 })),
    },
    everyPhrase,
  );

export interface Measure {
  readonly ears: Ears;
  /** Kinds of state and reasons of failure that the ears have been in, in order. */
  readonly states: readonly string[];
  readonly noises: readonly string[];
  /** What has been understood since the last recording began. */
  readonly outcomes: () => readonly Outcome[];
  readonly decode: (url: string) => Promise<Float32Array>;
  readonly load: typeof load;
  readonly listen: typeof listen;
  readonly meaning: typeof meaning;
}

declare global {
  interface Window {
    /** For the program that measures. */
    measure: Measure;
  }
}

window.measure = {
  ears,
  states,
  noises,
  outcomes: () => outcomes,
  decode: fetchSound,
  load,
  listen,
  meaning,
};
