// @vitest-environment jsdom
import { act } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { PracticeScreen } from '@/components/kiosk/practice-screen';
import type { PracticeRecord } from '@/lib/practice';
import { err, ok, type Result } from '@/lib/result';
import { FakeWorker } from '../microphone/fake-worker';
import { isDisabled, key, press, render, screen, within } from './dom';

const facts = {
  name: 'en-bay-3',
  url: '/hearing/model/0/model.tar.gz',
  bytes: 100,
  sha256: '0'.repeat(64),
};

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval'] });
  FakeWorker.made = [];
  vi.stubGlobal('Worker', FakeWorker);
  vi.stubGlobal('fetch', () => Promise.resolve(Response.json(facts)));
  vi.stubGlobal('isSecureContext', false);
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const pass = (ms: number): Promise<void> =>
  act(async () => {
    await vi.advanceTimersByTimeAsync(ms);
  });

const worker = (): FakeWorker => {
  const [made] = FakeWorker.made;
  if (made === undefined) throw new Error('there is no recogniser');
  return made;
};

let atS = 0;
/** The recognisers hear words, each with this confidence; then a pause. */
const hear = async (say: string, confidence = 1): Promise<void> => {
  const grammars = worker().received.filter((message) => message.kind === 'grammars');
  const words = say.split(' ').map((text, i) => ({
    text,
    confidence,
    startS: atS + i * 0.4,
    endS: atS + i * 0.4 + 0.3,
  }));
  atS += 10;
  worker().say({
    kind: 'utterance',
    utterance: {
      generation: grammars.at(-1)?.generation ?? 0,
      passes: [{ words }, { words }],
      ending: 'pause',
      startS: words[0]?.startS ?? 0,
      endS: atS - 5,
      decidedAtMs: 0,
    },
  });
  await pass(1);
  // Numbers, and words that are no phrase, wait for what may follow.
  worker().say({
    kind: 'level',
    levelDb: -60,
    backgroundDb: -60,
    speaking: false,
    stillS: 4,
    atS,
    arrivedMs: 0,
  });
  await pass(1);
};

const open = async (kept: Result<void, string> = ok(undefined)) => {
  const keep = vi.fn((_: PracticeRecord) => Promise.resolve(kept));
  const on = { kept: vi.fn(), close: vi.fn() };
  render(
    <PracticeScreen
      name="Tom"
      before={undefined}
      footKey="F13"
      link={{ model: () => Promise.resolve(ok('en-bay-3')), keep }}
      onKept={on.kept}
      onClose={on.close}
    />,
  );
  press('Begin');
  await pass(1);
  worker().say({ kind: 'loaded' });
  await pass(1);
  return { keep, on };
};

const asked = (): string => document.querySelector('[data-value="main"]')?.textContent ?? '';
const status = (): string =>
  screen
    .getAllByRole('status')
    .map((one) => one.textContent)
    .join(' ');

describe('the practice', () => {
  test('shows what was heard and how surely, and goes on by itself', async () => {
    await open();
    expect(asked()).toBe('“next”');
    await hear('next', 0.93);
    expect(status()).toBe('Heard “next”: right, 93 % sure');
    expect(asked()).toBe('“next”');
    await pass(2_500);
    expect(asked()).toBe('“go back”');
    expect(status()).toBe('');
  });

  test('asks once more for what was heard as something else', async () => {
    await open();
    await hear('repeat', 0.8);
    expect(status()).toBe('Heard “repeat”: something else, 80 % sure');
    key('ArrowRight');
    expect(asked()).toBe('“next”');
    expect(screen.getByText('Say it again, 2 of 2')).toBeTruthy();
    await hear('where is the oil');
    expect(status()).toBe('Heard “where is the oil”: no phrase');
    key('F13');
    expect(asked()).toBe('“go back”');
  });

  test('a phrase is passed over by a touch, and all is left by a key', async () => {
    const { on } = await open();
    press(/Pass over/);
    expect(asked()).toBe('“go back”');
    key('Escape');
    expect(on.close).toHaveBeenCalledOnce();
  });

  test('gives words of one’s own for what failed, tries them, and keeps all with the name', async () => {
    const { keep, on } = await open();
    for (let i = 0; i < 2; i += 1) {
      await hear('repeat', 0.8);
      key('ArrowRight');
    }
    await hear('go back');
    press(/Enough/);
    expect(status()).toBe('1 of 2 work');
    const trouble = within(screen.getByRole('list', { name: 'What does not work each time' }));
    expect(trouble.getByText('does not work')).toBeTruthy();
    expect(trouble.getByText(/Say “done”, “next step”, “step done”/)).toBeTruthy();
    expect(screen.getByText('Phrases under 81 % sure are asked for again.')).toBeTruthy();
    press('“carry on”');
    expect(asked()).toBe('“carry on”');
    for (let i = 0; i < 2; i += 1) {
      await hear('carry on');
      key('ArrowRight');
    }
    expect(screen.getByText('You say “carry on” for it.')).toBeTruthy();
    expect(screen.getByText('You can say “carry on”.')).toBeTruthy();
    press('Keep this with my name');
    await pass(1);
    expect(on.kept).toHaveBeenCalledOnce();
    const record = keep.mock.calls[0]?.[0];
    expect(record).toMatchObject({
      model: 'en-bay-3',
      own: [{ insteadOf: 'next', say: 'carry on' }],
    });
    expect(record?.phrases[0]).toEqual({
      say: 'next',
      tries: [
        { as: 'other', heard: 'repeat', confidence: 0.8 },
        { as: 'other', heard: 'repeat', confidence: 0.8 },
      ],
    });
  });

  test('says when it could not be kept', async () => {
    const { on } = await open(err('The server cannot be reached. Try again.'));
    await hear('next');
    press(/Enough/);
    press('Keep this with my name');
    await pass(1);
    expect(screen.getByRole('alert').textContent).toBe('The server cannot be reached. Try again.');
    expect(on.kept).not.toHaveBeenCalled();
  });

  test('keeps nothing when nothing was tried', async () => {
    await open();
    press(/Enough/);
    expect(isDisabled('Keep this with my name')).toBe(true);
  });
});
