import { describe, expect, it } from 'vitest';
import { Hearing } from '@/components/microphone/hearing';
import type { FromWorker } from '@/components/microphone/protocol';
import { FakeEngine, sound } from './fake-engine';

const background = -60;
const speech = -25;

const setUp = () => {
  const engine = new FakeEngine();
  const told: FromWorker[] = [];
  const hearing = new Hearing({
    engine,
    rateHz: 16_000,
    tell: (message) => told.push(message),
    now: () => 0,
  });
  hearing.listenFor({ kind: 'grammars', generation: 1, grammars: [['next']] });
  const done = async (): Promise<void> => {
    for (let i = 0; i < 20_000; i += 1) await Promise.resolve();
  };
  const speak = async (ms: number, db: number): Promise<void> => {
    for (const frame of sound(ms, db)) hearing.fromMicrophone(frame);
    await done();
  };
  const kinds = (): string[] => told.map(({ kind }) => kind).filter((kind) => kind !== 'level');
  return { engine, told, hearing, done, speak, kinds };
};

const recording = (ms: number, db: number): Float32Array<ArrayBuffer> =>
  new Float32Array(16 * ms).fill(10 ** (db / 20));

describe('hearing', () => {
  it('tells the level ten times a second', async () => {
    const { told, speak } = setUp();
    await speak(1000, -40);
    const levels = told.filter((message) => message.kind === 'level');
    expect(levels).toHaveLength(10);
    expect(levels[9]?.levelDb).toBeCloseTo(-40, 1);
    expect(levels[9]?.atS).toBe(1);
  });

  it('does not hear the kiosk itself, nor its echo just after', async () => {
    const { engine, hearing, speak, kinds } = setUp();
    await speak(1000, background);
    hearing.mute(true);
    await speak(1000, speech);
    hearing.mute(false);
    await speak(240, speech);
    const before = engine.latest.accepted;
    await speak(1000, background);
    engine.latest.words = ['next'];
    expect(before).toBe(16_000);
    expect(kinds()).toEqual([]);
    await speak(400, speech);
    await speak(500, background);
    expect(kinds()).toEqual(['utterance']);
  });

  it('listens to somebody who speaks up while the kiosk does, from the first word on', async () => {
    const { engine, told, hearing, speak, kinds } = setUp();
    await speak(1000, background);
    hearing.mute(true);
    await speak(1500, -45);
    expect(kinds()).toEqual([]);
    const before = engine.latest.accepted;
    engine.latest.words = ['next'];
    await speak(500, speech);
    expect(kinds()).toEqual(['bargeIn']);
    // What the kiosk had said before is not heard, but for the half second that held the beginning.
    expect(engine.latest.accepted - before).toBeGreaterThanOrEqual(500 * 16);
    expect(engine.latest.accepted - before).toBeLessThanOrEqual(1000 * 16);
    // The page has hushed the kiosk: nothing of the phrase is taken for an echo.
    hearing.mute(false);
    await speak(500, background);
    expect(kinds()).toEqual(['bargeIn', 'utterance']);
    const [said] = told.filter((message) => message.kind === 'utterance');
    expect(said?.utterance.overOwnVoice).toBe(true);
    engine.latest.words = ['next'];
    await speak(2000, background);
    await speak(400, speech);
    await speak(500, background);
    const later = told.filter((message) => message.kind === 'utterance').at(-1);
    expect(kinds()).toEqual(['bargeIn', 'utterance', 'utterance']);
    expect(later?.utterance.overOwnVoice).toBeUndefined();
  });

  it('listens to a recording instead of the microphone until it is over', async () => {
    const { engine, hearing, done, speak, kinds } = setUp();
    await speak(1000, background);
    hearing.fromRecording(recording(500, background));
    await done();
    const before = engine.latest.accepted;
    await speak(1000, speech);
    expect(engine.latest.accepted).toBe(before);
    hearing.flush(7);
    await done();
    expect(kinds()).toEqual(['fed', 'flushed']);
    await speak(1000, background);
    expect(engine.latest.accepted).toBeGreaterThan(before);
  });

  it('takes a note and then goes on listening for phrases', async () => {
    const { engine, hearing, told, done, speak } = setUp();
    await speak(500, background);
    hearing.dictate(30);
    await done();
    const [phrases, note] = engine.made;
    const before = phrases?.accepted;
    await speak(1000, background);
    await speak(600, speech);
    if (note !== undefined) note.words = ['bent'];
    await speak(2000, background);
    expect(phrases?.accepted).toBeGreaterThan(before ?? 0);
    const [dictated] = told.filter((message) => message.kind === 'dictated');
    expect(dictated?.words.map(({ text }) => text)).toEqual(['bent']);
    expect(dictated?.clip.byteLength).toBeGreaterThan(44 + 2 * 16 * 2800);
  });

  it('loses a phrase rather than fall ever further behind', async () => {
    const { engine, hearing, done, speak, kinds } = setUp();
    await speak(1000, background);
    engine.latest.words = ['next'];
    // Ten seconds at once are more than it keeps.
    for (const frame of [...sound(4500, speech), ...sound(5500, speech)])
      hearing.fromMicrophone(frame);
    await done();
    expect(engine.latest.accepted).toBeLessThan(16_000 * 7);
    expect(kinds()).toEqual([]);
  });

  it('reports that the recogniser has failed', async () => {
    const { engine, told, speak } = setUp();
    await speak(100, background);
    engine.latest.accept = () => Promise.reject(new Error('out of memory'));
    await speak(200, background);
    expect(told.filter(({ kind }) => kind === 'failed')).toEqual([
      { kind: 'failed', reason: 'workerDead', detail: 'out of memory' },
    ]);
  });
});
