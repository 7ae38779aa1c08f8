import { expect, it } from 'vitest';
import { Dictation } from '@/components/microphone/dictation';
import { FakeEngine, sound } from './fake-engine';

const rules = { pauseMs: 1500, patienceS: 8, limitS: 30 };

/** Feeds sound until the note is over; tells after how many ms, or undefined. */
const feed = async (
  dictation: Dictation,
  frames: readonly Float32Array[],
): Promise<number | undefined> => {
  let ms = 0;
  for (const frame of frames) {
    ms += 20;
    if (await dictation.hear(frame)) return ms;
  }
  return undefined;
};

it('lasts over a pause for thought and ends at a long one, with all words and all the sound', async () => {
  const engine = new FakeEngine();
  const dictation = new Dictation(engine, 16_000, rules);
  expect(engine.latest.phrases).toBeUndefined();
  const spoken = [...sound(1000, -60), ...sound(800, -25), ...sound(1000, -60), ...sound(800, -25)];
  expect(await feed(dictation, spoken.slice(0, 120))).toBeUndefined();
  engine.latest.words = ['bracket'];
  engine.latest.endsItself = true;
  expect(await feed(dictation, spoken.slice(120))).toBeUndefined();
  const end = await feed(dictation, sound(3000, -60));
  expect(end).toBeGreaterThan(1400);
  expect(end).toBeLessThan(1800);
  engine.latest.words = ['bent'];
  const { words, clip } = await dictation.end();
  expect(words.map(({ text }) => text)).toEqual(['bracket', 'bent']);
  expect(clip.byteLength).toBe(44 + 2 * 16 * (3600 + (end ?? 0)));
  expect(engine.latest.removed).toBe(true);
});

it('gives up when nobody begins', async () => {
  const dictation = new Dictation(new FakeEngine(), 16_000, rules);
  expect(await feed(dictation, sound(20_000, -60))).toBe(8000);
});

it('is never longer than its limit', async () => {
  const dictation = new Dictation(new FakeEngine(), 16_000, { ...rules, limitS: 5 });
  const talk = [...sound(1000, -60), ...sound(20_000, -20)];
  expect(await feed(dictation, talk)).toBe(5000);
});
