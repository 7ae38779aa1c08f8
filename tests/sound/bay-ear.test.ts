import { describe, expect, it } from 'vitest';
import { BayEar } from '@/components/microphone/sounds/bay-ear';
import type { SoundTeller } from '@/components/microphone/sounds/sound-link';
import { noScores, type BaySound, type KindScores } from '@/lib/sound';

const wrench: KindScores = { ...noScores, impactTool: 0.95, speech: 0.2 };

class FakeTeller implements SoundTeller {
  ready = true;
  asked: number[] = [];
  answer: KindScores | undefined = wrench;
  /** Held back until the test lets it go. */
  gate: Promise<void> = Promise.resolve();

  async tell(samples: Float32Array): Promise<KindScores | undefined> {
    this.asked.push(samples.length);
    await this.gate;
    return this.answer;
  }
}

const setUp = () => {
  const teller = new FakeTeller();
  const changes: BaySound[] = [];
  const ear = new BayEar({ teller, rateHz: 16_000, onChange: (bay) => changes.push(bay) });
  let frames = 0;
  const hear = async (count: number, recording = true): Promise<void> => {
    for (let i = 0; i < count; i += 1)
      await ear.hear(new Float32Array(320).fill(0.3), (frames += 1) / 50, recording);
  };
  return { teller, changes, ear, hear };
};

describe('listening to the bay', () => {
  it('asks about the last second, twice a second', async () => {
    const { teller, hear } = setUp();
    await hear(49);
    expect(teller.asked).toEqual([]);
    await hear(101);
    expect(teller.asked).toEqual([16_000, 16_000, 16_000, 16_000, 16_000]);
  });

  it('tells of a change once', async () => {
    const { changes, hear } = setUp();
    await hear(300);
    expect(changes.map(({ kind, level }) => [kind, level])).toEqual([
      ['quiet', 'loud'],
      ['impactTool', 'loud'],
    ]);
  });

  it('looks at the sound up to now before it trusts what was said', async () => {
    const { teller, ear, hear } = setUp();
    teller.answer = { ...noScores, speech: 0.9 };
    await hear(60);
    teller.answer = wrench;
    expect(await ear.trust({ startS: 0.5, endS: 1 }, true)).toBe('tooLoud');
  });

  it('asks a slow classifier about the microphone less often, and does not wait for it', async () => {
    const { teller, hear } = setUp();
    let open = (): void => undefined;
    teller.gate = new Promise((resolve) => {
      open = resolve;
    });
    await hear(200, false);
    expect(teller.asked).toHaveLength(1);
    open();
  });

  it('takes no answer about one source for another', async () => {
    const { teller, ear, hear } = setUp();
    let open = (): void => undefined;
    teller.gate = new Promise((resolve) => {
      open = resolve;
    });
    await hear(50, false);
    ear.newSource();
    open();
    await teller.gate;
    await new Promise((resolve) => setTimeout(resolve));
    expect(ear.bay.tooLoud).toEqual([]);
  });

  it('trusts everything where no classifier is there, or it gives no answer', async () => {
    const { teller, ear, hear } = setUp();
    teller.answer = undefined;
    await hear(100);
    expect(await ear.trust({ startS: 0, endS: 2 }, true)).toBe('trusted');
    teller.ready = false;
    teller.answer = wrench;
    await hear(100);
    expect(await ear.trust({ startS: 0, endS: 4 }, true)).toBe('trusted');
  });
});
