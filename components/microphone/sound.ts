/** The one rate at which sound is captured, fed and kept. */
export const sampleRateHz = 16_000;

/** Decisions are taken once per frame: 20 ms. */
export const frameSamples = 320;

/** Level of digital silence; a floor, so that meters and differences stay finite. */
export const silenceDb = -100;

/** Level of a power (mean square of samples within ±1), dB re full scale (a full-scale square wave is 0). */
export const decibel = (power: number): number =>
  Math.max(silenceDb, 10 * Math.log10(Math.max(power, Number.MIN_VALUE)));

/** Mean square of a stretch of samples; 0 of none. */
export const powerOf = (samples: Float32Array): number => {
  let sum = 0;
  for (const sample of samples) sum += sample * sample;
  return samples.length === 0 ? 0 : sum / samples.length;
};

/** The channels' mean. */
export const mixDown = (channels: readonly Float32Array[]): Float32Array => {
  const [first, ...rest] = channels;
  if (first === undefined) return new Float32Array(0);
  if (rest.length === 0) return first;
  return first.map(
    (sample, i) => rest.reduce((sum, channel) => sum + (channel[i] ?? 0), sample) / channels.length,
  );
};

/** Several stretches as one. */
export const join = (parts: readonly Float32Array[]): Float32Array<ArrayBuffer> => {
  const whole = new Float32Array(parts.reduce((length, part) => length + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
};
