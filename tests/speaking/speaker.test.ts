import { afterEach, beforeEach, describe, expect, it, test, vi } from 'vitest';
import { LocalVoice, type VoicePort } from '@/components/kiosk/local-voice';
import { Speaker } from '@/components/kiosk/speaker';

/** A voice that says what it was given until the test ends it. */
class FakeVoice implements VoicePort {
  readonly said: string[] = [];
  over: (() => void) | undefined;

  speak(text: string, onOver: () => void): void {
    this.said.push(text);
    this.over = onOver;
  }

  stop(): void {
    this.over = undefined;
  }
}

const setUp = () => {
  const voice = new FakeVoice();
  const speaking: (string | undefined)[] = [];
  let nowMs = 0;
  const speaker = new Speaker(
    voice,
    (text) => speaking.push(text),
    () => nowMs,
  );
  const wait = (ms: number): void => {
    nowMs += ms;
  };
  return { voice, speaker, speaking, wait };
};

describe('the speaker', () => {
  it('tells what is being said, and when that is over', () => {
    const { voice, speaker, speaking } = setUp();
    speaker.say('Step 4');
    voice.over?.();
    speaker.say('Step 5');
    speaker.say('Step 6');
    speaker.hush();
    expect(voice.said).toEqual(['Step 4', 'Step 5', 'Step 6']);
    expect(speaking).toEqual(['Step 4', undefined, 'Step 5', 'Step 6', undefined]);
  });

  it('is not ended by what it was cut off in', () => {
    const { voice, speaker, speaking } = setUp();
    speaker.say('Step 4');
    const late = voice.over;
    speaker.say('Step 5');
    late?.();
    expect(speaking).toEqual(['Step 4', 'Step 5']);
  });

  it('waits for a tool, though not for long', () => {
    const { voice, speaker, wait } = setUp();
    speaker.tool(true);
    speaker.say('Step 4');
    wait(3_000);
    speaker.tool(false);
    expect(voice.said).toEqual(['Step 4']);
    voice.over?.();
    speaker.tool(true);
    speaker.say('Step 5');
    wait(7_000);
    speaker.tool(false);
    expect(voice.said).toEqual(['Step 4']);
  });

  it('lets a dictation begin when it is quiet, and then says nothing late into it', async () => {
    const { voice, speaker, wait } = setUp();
    speaker.say('Why?');
    let quiet = false;
    const waited = speaker.whenQuiet().then(() => {
      quiet = true;
    });
    await Promise.resolve();
    expect(quiet).toBe(false);
    voice.over?.();
    await waited;
    speaker.tool(true);
    speaker.say('Why not?');
    await speaker.whenQuiet();
    wait(100);
    speaker.tool(false);
    expect(voice.said).toEqual(['Why?']);
  });
});

describe('the machine’s own voice', () => {
  const cancel = vi.fn();
  const spoken: { text: string; onstart?: () => void; onend?: () => void }[] = [];
  let voices: { localService: boolean; lang: string; name: string }[] = [];

  beforeEach(() => {
    vi.useFakeTimers();
    spoken.length = 0;
    cancel.mockClear();
    vi.stubGlobal(
      'SpeechSynthesisUtterance',
      class {
        constructor(readonly text: string) {}
      },
    );
    vi.stubGlobal('speechSynthesis', {
      getVoices: () => voices,
      speak: (words: { text: string }) => spoken.push(words),
      cancel,
    });
  });
  afterEach(() => {
    vi.useRealTimers();
    vi.unstubAllGlobals();
  });

  test('is only one that lives on this machine', () => {
    voices = [{ localService: false, lang: 'en-US', name: 'of a service' }];
    expect(LocalVoice.available()).toBe(false);
    const over = vi.fn();
    new LocalVoice().speak('Step 4', over);
    expect(spoken).toEqual([]);
    expect(over).toHaveBeenCalledOnce();
    voices = [...voices, { localService: true, lang: 'en-GB', name: 'own' }];
    expect(LocalVoice.available()).toBe(true);
    new LocalVoice().speak('Step 4', over);
    expect(spoken[0]).toMatchObject({ text: 'Step 4', voice: { name: 'own' } });
  });

  test('counts as over when the browser holds it back, so that the kiosk listens again', () => {
    voices = [{ localService: true, lang: 'en-GB', name: 'own' }];
    const over = vi.fn();
    new LocalVoice().speak('Step 4', over);
    vi.advanceTimersByTime(2_100);
    expect(over).toHaveBeenCalledOnce();
    const talks = vi.fn();
    new LocalVoice().speak('Step 5', talks);
    spoken[1]?.onstart?.();
    vi.advanceTimersByTime(3_000);
    expect(talks).not.toHaveBeenCalled();
    vi.advanceTimersByTime(3_000);
    expect(talks).toHaveBeenCalledOnce();
  });

  test('stops without a word to whoever stopped it', () => {
    voices = [{ localService: true, lang: 'en-GB', name: 'own' }];
    const over = vi.fn();
    const voice = new LocalVoice();
    voice.speak('Step 4', over);
    voice.stop();
    spoken[0]?.onend?.();
    vi.advanceTimersByTime(60_000);
    expect(over).not.toHaveBeenCalled();
    expect(cancel).toHaveBeenCalledOnce();
  });
});
