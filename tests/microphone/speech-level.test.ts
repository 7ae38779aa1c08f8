import { describe, expect, it } from 'vitest';
import { SpeechLevel } from '@/components/microphone/speech-level';

/** Lets so many milliseconds of one level pass, in frames of 20 ms. */
const pass = (level: SpeechLevel, ms: number, db: number): void => {
  for (let t = 0; t < ms; t += 20) level.accept(db);
};

describe('speech over a background', () => {
  it('begins after a tenth of a second of clearly louder sound', () => {
    const level = new SpeechLevel();
    pass(level, 1000, -60);
    expect(level.speaking).toBe(false);
    pass(level, 60, -30);
    expect(level.speaking).toBe(false);
    pass(level, 80, -30);
    expect(level.speaking).toBe(true);
  });

  it('is not the room after a microphone that gave no sound at all while it started', () => {
    const level = new SpeechLevel();
    pass(level, 60, -100);
    pass(level, 1000, -50);
    expect(level.speaking).toBe(false);
    expect(level.backgroundDb).toBeCloseTo(-50);
    pass(level, 200, -20);
    expect(level.speaking).toBe(true);
  });

  it('pauses where a microphone gives no sound at all between words', () => {
    const level = new SpeechLevel();
    pass(level, 1000, -50);
    pass(level, 400, -20);
    pass(level, 300, -100);
    expect(level.quietMs).toBe(300);
    expect(level.backgroundDb).toBeGreaterThan(-51);
  });

  it('is not a knock of two frames', () => {
    const level = new SpeechLevel();
    pass(level, 1000, -60);
    pass(level, 40, -20);
    pass(level, 500, -60);
    expect(level.speaking).toBe(false);
  });

  it('counts the quiet after it, and forgets it when speech goes on', () => {
    const level = new SpeechLevel();
    pass(level, 1000, -60);
    pass(level, 600, -30);
    expect(level.quietMs).toBe(0);
    pass(level, 400, -60);
    expect(level.quietMs).toBeGreaterThan(200);
    expect(level.quietMs).toBeLessThanOrEqual(400);
    pass(level, 100, -30);
    expect(level.quietMs).toBe(0);
  });

  it('takes a fall of more than 30 dB below the peak for a pause, although it is still over the background', () => {
    const level = new SpeechLevel();
    pass(level, 1000, -80);
    pass(level, 600, -20);
    pass(level, 400, -60);
    expect(level.quietMs).toBeGreaterThan(150);
  });

  it('knows how long it has been still, and takes even a faint word for a sound', () => {
    const level = new SpeechLevel();
    pass(level, 2000, -60);
    expect(level.stillMs).toBe(2000);
    pass(level, 80, -50);
    expect(level.speaking).toBe(false);
    expect(level.stillMs).toBe(0);
    pass(level, 1000, -60);
    expect(level.stillMs).toBeGreaterThan(900);
  });

  it('gets used to a steady noise', () => {
    const level = new SpeechLevel();
    pass(level, 1000, -70);
    pass(level, 30_000, -40);
    level.end();
    pass(level, 2000, -40);
    expect(level.speaking).toBe(false);
    expect(level.backgroundDb).toBeCloseTo(-40, 0);
  });
});
