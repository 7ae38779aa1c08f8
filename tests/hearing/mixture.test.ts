import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  endOfSpeechS,
  repeatable,
  withNoise,
  withRoom,
} from '@/components/microphone/measure/mixture';
import { powerOf } from '@/components/microphone/sound';

/** Half a second of quiet, a second of a loud tone, half a second of quiet. */
const speech = (): Float32Array => {
  const random = repeatable(5);
  return Float32Array.from({ length: 32_000 }, (_, i) => {
    const loud = i >= 8000 && i < 24_000;
    return loud ? 0.3 * Math.sin((2 * Math.PI * 440 * i) / 16_000) : 0.001 * (2 * random() - 1);
  });
};
const noise = (): Float32Array => {
  const random = repeatable(9);
  return Float32Array.from({ length: 10_000 }, () => 0.2 * (2 * random() - 1));
};

it('finds the end of speech to a frame', () => {
  expect(endOfSpeechS(speech())).toBeCloseTo(1.5, 2);
});

it('does not claim an end where nothing stands out', () => {
  expect(endOfSpeechS(noise())).toBeUndefined();
});

it('puts the recording between room as loud as its own quiet', () => {
  const sound = speech();
  const whole = withRoom(sound, 0.5, 1);
  expect(whole).toHaveLength(8000 + sound.length + 16_000);
  expect([...whole.subarray(8000, 8010)]).toEqual([...sound.subarray(0, 10)]);
  const ratio = powerOf(whole.subarray(0, 8000)) / powerOf(sound.subarray(0, 8000));
  expect(10 * Math.log10(ratio)).toBeGreaterThan(-2);
  expect(10 * Math.log10(ratio)).toBeLessThan(2);
});

describe('noise', () => {
  it('lies as far under the speech as was asked', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 30 }), fc.nat(1000), (snrDb, seed) => {
        const sound = speech();
        const mixed = withNoise(sound, sound, noise(), snrDb, seed);
        const scale = Math.min(1, 1 / Math.max(...mixed.map(Math.abs)));
        const added = mixed.map((sample, i) => sample - scale * (sound[i] ?? 0));
        const speechPower = powerOf(sound.subarray(8000, 24_000));
        const ratio = 10 * Math.log10(speechPower / powerOf(added));
        // A louder mixture is scaled down whole; then speech and noise keep their ratio.
        if (Math.max(...mixed.map(Math.abs)) < 0.999) expect(ratio).toBeCloseTo(snrDb, 0);
      }),
      { numRuns: 25 },
    );
  });

  it('is the same each time for the same seed, and another for another', () => {
    const sound = speech();
    const mix = (seed: number): number[] => [...withNoise(sound, sound, noise(), 10, seed)];
    expect(mix(3)).toEqual(mix(3));
    expect(mix(3)).not.toEqual(mix(4));
  });

  it('never clips', () => {
    const sound = speech().map((sample) => 3 * sample);
    const mixed = withNoise(sound, sound, noise(), 0, 1);
    expect(Math.max(...mixed.map(Math.abs))).toBeLessThanOrEqual(1);
  });
});
