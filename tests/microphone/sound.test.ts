import { describe, expect, it } from 'vitest';
import { decibel, join, mixDown, powerOf, silenceDb } from '@/components/microphone/sound';

describe('levels', () => {
  it('are 0 dB for a full-scale square wave and 3.01 dB lower for a sine (IEC 61606-1 calls the sine 0 dBFS; we do not)', () => {
    const square = new Float32Array([1, -1, 1, -1]);
    const sine = Float32Array.from({ length: 1600 }, (_, i) => Math.sin((2 * Math.PI * i) / 16));
    expect(decibel(powerOf(square))).toBe(0);
    expect(decibel(powerOf(sine))).toBeCloseTo(-3.0103, 3);
  });

  it('drop 20 dB when the amplitude is a tenth', () => {
    expect(decibel(powerOf(new Float32Array([0.1, -0.1])))).toBeCloseTo(-20, 4);
  });

  it('stay finite in digital silence', () => {
    expect(decibel(powerOf(new Float32Array(320)))).toBe(silenceDb);
    expect(decibel(powerOf(new Float32Array(0)))).toBe(silenceDb);
  });
});

describe('stereo', () => {
  it('becomes the mean of its channels', () => {
    const left = new Float32Array([1, 0, -1]);
    const right = new Float32Array([0, 0.5, -1]);
    expect([...mixDown([left, right])]).toEqual([0.5, 0.25, -1]);
  });

  it('is empty when there is no channel', () => {
    expect(mixDown([])).toHaveLength(0);
  });
});

it('joins pieces in order', () => {
  expect([...join([new Float32Array([1, 2]), new Float32Array([3])])]).toEqual([1, 2, 3]);
});
