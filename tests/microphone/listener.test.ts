import { describe, expect, it } from 'vitest';
import { Listener } from '@/components/microphone/listener';
import type { Utterance } from '@/components/microphone/protocol';
import { FakeEngine, sound } from './fake-engine';

const background = -60;
const speech = -25;

const setUp = () => {
  const engine = new FakeEngine();
  const utterances: Utterance[] = [];
  const listener = new Listener({
    engine,
    rateHz: 16_000,
    emit: (utterance) => utterances.push(utterance),
    now: () => 0,
  });
  const pass = async (ms: number, db: number): Promise<void> => {
    for (const frame of sound(ms, db)) await listener.hear(frame);
  };
  return { engine, utterances, listener, pass };
};

describe('listening', () => {
  it('ends an utterance at a pause and gives its words, without waiting for the recogniser’s own rule', async () => {
    const { engine, utterances, listener, pass } = setUp();
    listener.listenFor(1, [['next', '[unk]']]);
    await pass(1000, background);
    await pass(400, speech);
    engine.latest.words = ['next'];
    await pass(500, background);
    expect(utterances).toHaveLength(1);
    expect(utterances[0]).toMatchObject({ generation: 1, ending: 'pause' });
    expect(utterances[0]?.passes[0]?.words.map(({ text }) => text)).toEqual(['next']);
  });

  it('decides on the time of the sound: the pause is found within 0.35 s of the last loud frame', async () => {
    const { engine, utterances, listener, pass } = setUp();
    listener.listenFor(1, [['next']]);
    await pass(1000, background);
    await pass(400, speech);
    engine.latest.words = ['next'];
    await pass(1000, background);
    const endOfSpeechS = 1.4;
    expect((utterances[0]?.endS ?? 9) - endOfSpeechS).toBeGreaterThan(0.2);
    expect((utterances[0]?.endS ?? 9) - endOfSpeechS).toBeLessThan(0.35);
  });

  it('says by how much the words stood out from the background', async () => {
    const { engine, utterances, listener, pass } = setUp();
    listener.listenFor(1, [['next']]);
    await pass(2000, background);
    await pass(600, speech);
    engine.latest.words = ['next'];
    await pass(500, background);
    expect(utterances[0]?.speechOverNoiseDb).toBeCloseTo(speech - background, 0);
  });

  it('says by how much they stood out from a noise that came and went before them', async () => {
    const { engine, utterances, listener, pass } = setUp();
    listener.listenFor(1, [['one', '[unk]']]);
    await pass(1000, background);
    for (let blow = 0; blow < 4; blow += 1) {
      await pass(160, -35);
      await pass(160, background);
    }
    await pass(400, speech);
    engine.latest.words = ['one'];
    await pass(500, background);
    expect(utterances[0]?.speechOverNoiseDb).toBeCloseTo(speech - background, 0);
    expect(utterances[0]?.speechOverLoudNoiseDb).toBeCloseTo(speech + 35, 0);
  });

  it('does not take a word before for noise', async () => {
    const { engine, utterances, listener, pass } = setUp();
    listener.listenFor(1, [['one']]);
    await pass(1000, background);
    for (let word = 0; word < 2; word += 1) {
      await pass(400, speech);
      engine.latest.words = ['one'];
      await pass(700, background);
    }
    const over = utterances.map(({ speechOverLoudNoiseDb }) => speechOverLoudNoiseDb);
    expect(over).toHaveLength(2);
    for (const one of over) expect(one ?? 99).toBeGreaterThan(30);
  });

  it('takes the recogniser’s own end where noise hides the pause', async () => {
    const { engine, utterances, listener, pass } = setUp();
    listener.listenFor(1, [['next']]);
    await pass(1000, -30);
    engine.latest.words = ['next'];
    engine.latest.endsItself = true;
    await pass(200, -30);
    expect(utterances[0]).toMatchObject({ ending: 'recogniser' });
  });

  it('loses no word when a recogniser ends by itself just before the pause, or not together with the first', async () => {
    const { engine, utterances, listener, pass } = setUp();
    listener.listenFor(1, [['one'], null]);
    const [first, second] = engine.made;
    if (first === undefined || second === undefined) throw new Error('two are wanted');
    await pass(1000, background);
    await pass(400, speech);
    second.words = ['won'];
    second.endsItself = true;
    await pass(220, background);
    first.words = ['one'];
    first.endsItself = true;
    await pass(300, background);
    expect(utterances).toHaveLength(1);
    expect(utterances[0]?.passes.map(({ words }) => words.map(({ text }) => text))).toEqual([
      ['one'],
      ['won'],
    ]);
  });

  it('says nothing about a pause without words', async () => {
    const { utterances, listener, pass } = setUp();
    listener.listenFor(1, [['next']]);
    await pass(1000, background);
    await pass(400, speech);
    await pass(1000, background);
    expect(utterances).toEqual([]);
  });

  it('ends an utterance that never stops', async () => {
    const { engine, utterances, listener, pass } = setUp();
    listener.listenFor(1, [['next']]);
    await pass(1000, -60);
    engine.latest.words = ['[unk]'];
    // Louder and louder, so that the background never catches up.
    for (let s = 0; s < 20; s += 1) await pass(1000, -45 + 2 * s);
    expect(utterances[0]).toMatchObject({ ending: 'limit' });
  });

  it('gives every recogniser the same sound and one reading of each', async () => {
    const { engine, utterances, listener, pass } = setUp();
    listener.listenFor(1, [['one'], null]);
    const [first, second] = engine.made;
    await pass(1000, background);
    await pass(400, speech);
    if (first !== undefined) first.words = ['one'];
    if (second !== undefined) second.words = ['won'];
    await pass(500, background);
    expect(second?.phrases).toBeUndefined();
    expect(first?.accepted).toBe(second?.accepted);
    expect(utterances[0]?.passes.map(({ words }) => words[0]?.text)).toEqual(['one', 'won']);
  });
});

describe('another grammar', () => {
  it('comes into use at once while nobody speaks, and the old recogniser is removed', () => {
    const { engine, listener } = setUp();
    listener.listenFor(1, [['next']]);
    listener.listenFor(2, [['yes', 'no']]);
    expect(engine.made.map(({ removed }) => removed)).toEqual([true, false]);
    expect(engine.latest.phrases).toEqual(['yes', 'no']);
  });

  it('waits for the end of what is being said, which still belongs to the old one', async () => {
    const { engine, utterances, listener, pass } = setUp();
    listener.listenFor(1, [['next']]);
    await pass(1000, background);
    await pass(400, speech);
    listener.listenFor(2, [['yes']]);
    expect(engine.made).toHaveLength(1);
    engine.latest.words = ['next'];
    await pass(500, background);
    expect(utterances[0]?.generation).toBe(1);
    expect(engine.made).toHaveLength(2);
  });

  it('counts word times from the beginning of listening, whichever recogniser heard them', async () => {
    const { engine, utterances, listener, pass } = setUp();
    listener.listenFor(1, [['next']]);
    await pass(2000, background);
    listener.listenFor(2, [['yes']]);
    await pass(1000, background);
    await pass(400, speech);
    engine.latest.words = ['yes'];
    await pass(500, background);
    const word = utterances[0]?.passes[0]?.words[0];
    expect(word?.startS).toBeGreaterThan(3);
    expect(word?.endS).toBeLessThan(3.7);
  });
});

describe('sound that is not for the kiosk', () => {
  it('drops what was being said, and does not reach the recogniser', async () => {
    const { engine, utterances, listener, pass } = setUp();
    listener.listenFor(1, [['next']]);
    await pass(1000, background);
    await pass(400, speech);
    engine.latest.words = ['next'];
    await listener.drop();
    const before = engine.latest.accepted;
    for (const frame of sound(1000, speech)) await listener.skip(frame);
    expect(engine.latest.accepted).toBe(before);
    await pass(500, background);
    expect(utterances).toEqual([]);
  });
});
