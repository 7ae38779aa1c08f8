import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Ears, deafnessText, type EarState } from '@/components/microphone';
import type { FromWorker, Utterance } from '@/components/microphone/protocol';
import type { Understanding, VoiceContext } from '@/lib/voice';
import { FakeWorker } from './fake-worker';

const facts = {
  name: 'test',
  url: '/hearing/model/0/model.tar.gz',
  bytes: 100,
  sha256: '0'.repeat(64),
};
let modelAnswer: () => Response;

beforeEach(() => {
  // Only what the ears use: Node's own reading of a response needs the rest.
  vi.useFakeTimers({
    toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval', 'Date', 'performance'],
  });
  FakeWorker.made = [];
  modelAnswer = () => Response.json(facts);
  vi.stubGlobal('Worker', FakeWorker);
  vi.stubGlobal('fetch', () => Promise.resolve(modelAnswer()));
  vi.stubGlobal('isSecureContext', false);
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const soon = (): Promise<unknown> => vi.advanceTimersByTimeAsync(1);
const latest = (): FakeWorker => {
  const worker = FakeWorker.made.at(-1);
  if (worker === undefined) throw new Error('no worker has been made');
  return worker;
};
const say = async (message: FromWorker): Promise<void> => {
  latest().say(message);
  await soon();
};

const commands: VoiceContext = { intents: ['next', 'back', 'value'], labels: [], steps: 0 };
const question: VoiceContext = { intents: ['yes', 'no'], labels: [], steps: 0 };

const utterance = (text: string, generation: number, endS = 1): Utterance => ({
  generation,
  passes: [
    {
      words: text
        .split(' ')
        .map((word, i) => ({ text: word, confidence: 1, startS: i, endS: i + 1 })),
    },
  ],
  ending: 'pause',
  startS: 0,
  endS,
  decidedAtMs: 0,
});

const setUp = () => {
  const understood: Understanding[] = [];
  const previews: Understanding[] = [];
  const ears = new Ears({
    onUnderstood: (one) => understood.push(one),
    onPreview: (one) => previews.push(one),
  });
  return { ears, understood, previews };
};
const kind = ({ state }: { state: EarState }): string =>
  state.kind === 'failed' ? state.reason : state.kind;
const meant = (understandings: readonly Understanding[]): unknown[] =>
  understandings.map((one) =>
    one.kind === 'nothing'
      ? one.why
      : one.intent.kind === 'value'
        ? one.intent.value
        : one.intent.kind,
  );

describe('starting', () => {
  it('shows how much of the model has come', async () => {
    const { ears } = setUp();
    ears.start();
    await soon();
    expect(latest().url).toBe('/hearing/worker.js');
    expect(latest().received[0]).toMatchObject({ kind: 'load', model: facts });
    await say({ kind: 'loading', loaded: 40, total: 100 });
    expect(ears.state).toEqual({ kind: 'loading', loaded: 40, total: 100 });
  });

  it('says what is wrong with the model, and what to do', async () => {
    for (const problem of ['modelMissing', 'modelCorrupt'] as const) {
      modelAnswer = () => Response.json({ problem, detail: 'x' }, { status: 503 });
      const { ears } = setUp();
      ears.start();
      await soon();
      expect(ears.state).toEqual({ kind: 'failed', reason: problem, text: deafnessText[problem] });
    }
  });

  it('says that the page is not secure, but can still listen to a recording', async () => {
    const { ears, understood } = setUp();
    ears.attend(commands, 'step 1');
    ears.start();
    await soon();
    await say({ kind: 'loaded' });
    expect(kind(ears)).toBe('notSecure');
    const done = ears.listenTo(new Float32Array(1600));
    await say({ kind: 'utterance', utterance: utterance('next', 1) });
    await done;
    expect(meant(understood)).toEqual(['next']);
    expect(kind(ears)).toBe('notSecure');
  });
});

describe('a worker that dies', () => {
  it('is replaced by itself, with the same grammar', async () => {
    const { ears } = setUp();
    ears.attend(commands, 'step 1');
    ears.start();
    await soon();
    await say({ kind: 'loaded' });
    expect(latest().kinds()).toEqual(['load', 'grammars']);
    latest().onerror?.({ message: 'gone' });
    expect(kind(ears)).toBe('workerDead');
    expect(latest().terminated).toBe(true);
    await vi.advanceTimersByTimeAsync(600);
    expect(FakeWorker.made).toHaveLength(2);
    expect(kind(ears)).toBe('loading');
    await say({ kind: 'loaded' });
    expect(latest().kinds()).toEqual(['load', 'grammars']);
  });

  it('is found dead when it no longer answers', async () => {
    const { ears } = setUp();
    ears.start();
    await soon();
    await say({ kind: 'loaded' });
    await vi.advanceTimersByTimeAsync(7_000);
    expect(kind(ears)).toBe('notSecure');
    await vi.advanceTimersByTimeAsync(4_000);
    expect(FakeWorker.made[0]?.terminated).toBe(true);
  });

  it('is tried again ever more slowly', async () => {
    const { ears } = setUp();
    ears.start();
    for (const [waitMs, count] of [
      [600, 2],
      [2_100, 3],
      [10_100, 4],
    ] as const) {
      await soon();
      latest().onerror?.({ message: 'gone' });
      await vi.advanceTimersByTimeAsync(waitMs);
      expect(FakeWorker.made).toHaveLength(count);
    }
  });
});

describe('what was said', () => {
  const listening = async () => {
    const all = setUp();
    all.ears.attend(commands, 'step 1');
    all.ears.start();
    await soon();
    await say({ kind: 'loaded' });
    return all;
  };
  const level = (atS: number, stillS: number): FromWorker => ({
    kind: 'level',
    levelDb: -60,
    backgroundDb: -60,
    speaking: false,
    stillS,
    atS,
    arrivedMs: 0,
  });

  it('is ignored after stopping, even when it was already under way', async () => {
    const { ears, understood } = await listening();
    latest().say({ kind: 'utterance', utterance: utterance('next', 1) });
    ears.stop();
    await soon();
    expect(understood).toEqual([]);
    expect(kind(ears)).toBe('off');
  });

  it('does not act on a screen that has come up since', async () => {
    const { ears, understood } = await listening();
    ears.attend(commands, 'step 2');
    await say({ kind: 'utterance', utterance: utterance('next', 1) });
    expect(meant(understood)).toEqual(['the screen changed while you spoke; say it again']);
  });

  it('acts where the screen has only been drawn again', async () => {
    const { ears, understood } = await listening();
    ears.attend({ ...commands }, 'step 1');
    await say({ kind: 'utterance', utterance: utterance('next', 1) });
    expect(meant(understood)).toEqual(['next']);
    expect(
      latest()
        .kinds()
        .filter((one) => one === 'grammars'),
    ).toHaveLength(1);
  });

  it('is shown at once and acted on when it is over, if it is a number', async () => {
    const { understood, previews } = await listening();
    await say({ kind: 'utterance', utterance: utterance('one twenty', 1, 5) });
    expect(meant(previews)).toEqual([120]);
    expect(understood).toEqual([]);
    await say(level(5.3, 0.5));
    expect(understood).toEqual([]);
    await say(level(5.8, 1));
    expect(meant(understood)).toEqual([120]);
  });

  it('is not taken for the whole when the kiosk begins to speak or the screen changes in the middle of a number', async () => {
    const { ears, understood } = await listening();
    await say({ kind: 'utterance', utterance: utterance('one hundred', 1, 5) });
    ears.setMuted(true);
    expect(meant(understood)).toEqual(['the kiosk was speaking; say it again']);
    ears.setMuted(false);
    await say({ kind: 'utterance', utterance: utterance('one hundred', 1, 8) });
    ears.attend(question, 'question');
    expect(meant(understood)).toHaveLength(2);
    expect(understood.every((one) => one.kind === 'nothing')).toBe(true);
    expect(
      latest()
        .kinds()
        .filter((one) => one === 'mute'),
    ).toHaveLength(2);
  });
});

describe('a dictated note', () => {
  it('comes with its words and its sound', async () => {
    const { ears } = setUp();
    ears.start();
    await soon();
    await say({ kind: 'loaded' });
    const note = ears.takeNote(12);
    expect(latest().received.at(-1)).toEqual({ kind: 'dictate', limitS: 12 });
    const words = [{ text: 'bent', confidence: 0.4, startS: 0, endS: 1 }];
    await say({ kind: 'dictated', words, clip: new ArrayBuffer(44) });
    const taken = await note;
    expect(taken).toMatchObject({ text: 'bent', words });
    expect(taken?.clip.type).toBe('audio/wav');
    expect(taken?.clip.size).toBe(44);
  });

  it('is none when the recogniser dies before its end', async () => {
    const { ears } = setUp();
    ears.start();
    await soon();
    await say({ kind: 'loaded' });
    const note = ears.takeNote();
    latest().onerror?.({ message: 'gone' });
    expect(await note).toBeUndefined();
  });
});
