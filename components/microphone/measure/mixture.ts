import { decibel, frameSamples, powerOf, sampleRateHz } from '../sound';

/** A repeatable stream of numbers in [0, 1) (xorshift32, Marsaglia 2003). */
export const repeatable = (seed: number): (() => number) => {
  let state = seed | 0 || 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
};

/** Levels of the whole frames, dB. */
export const frameLevels = (samples: Float32Array): readonly number[] =>
  Array.from({ length: Math.floor(samples.length / frameSamples) }, (_, i) =>
    decibel(powerOf(samples.subarray(i * frameSamples, (i + 1) * frameSamples))),
  );

const quantile = (levels: readonly number[], share: number): number =>
  [...levels].sort((a, b) => a - b)[Math.floor(share * Math.max(0, levels.length - 1))] ?? -100;

/** Where speech counts as such: within 25 dB of the loudest frames and 9 dB over the quietest tenth. */
const speechFrames = (levels: readonly number[]): readonly number[] => {
  const threshold = Math.max(quantile(levels, 0.95) - 25, quantile(levels, 0.1) + 9);
  return levels.flatMap((level, i) => (level > threshold ? [i] : []));
};

/** End of the last frame with speech, s; undefined where speech does not stand out by 15 dB, so that its end is not known. */
export const endOfSpeechS = (samples: Float32Array): number | undefined => {
  const levels = frameLevels(samples);
  if (quantile(levels, 0.95) - quantile(levels, 0.1) < 15) return undefined;
  const last = speechFrames(levels).at(-1);
  return last === undefined ? undefined : ((last + 1) * frameSamples) / sampleRateHz;
};

/** The recording with room before and after it, filled with noise as loud as its own background. */
export const withRoom = (samples: Float32Array, leadS: number, tailS: number): Float32Array => {
  const random = repeatable(samples.length + 1);
  const amplitude = Math.sqrt(3 * 10 ** (quantile(frameLevels(samples), 0.1) / 10));
  const lead = Math.round(leadS * sampleRateHz);
  const whole = new Float32Array(lead + samples.length + Math.round(tailS * sampleRateHz));
  for (let i = 0; i < whole.length; i += 1) whole[i] = (2 * random() - 1) * amplitude;
  whole.set(samples, lead);
  return whole;
};

/**
 * The sound with noise under all of it. The ratio is that of the mean power of the speech frames to the mean power of
 * the noise; the noise begins at a place given by the seed and starts over at its end.
 */
export const withNoise = (
  sound: Float32Array,
  speech: Float32Array,
  noise: Float32Array,
  snrDb: number,
  seed: number,
): Float32Array => {
  const frames = speechFrames(frameLevels(speech));
  const speechPower =
    frames.reduce(
      (sum, i) => sum + powerOf(speech.subarray(i * frameSamples, (i + 1) * frameSamples)),
      0,
    ) / Math.max(1, frames.length);
  const noisePower = powerOf(noise);
  if (noisePower === 0) return sound;
  const gain = Math.sqrt(speechPower / (noisePower * 10 ** (snrDb / 10)));
  const from = Math.floor(repeatable(seed * 7919 + 17)() * noise.length);
  const mixed = sound.map((sample, i) => sample + gain * (noise[(from + i) % noise.length] ?? 0));
  const peak = mixed.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
  return peak > 1 ? mixed.map((sample) => sample / peak) : mixed;
};
