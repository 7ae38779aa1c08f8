import { describe, expect, it } from 'vitest';
import { Hearing } from '@/components/microphone/hearing';
import type { FromWorker } from '@/components/microphone/protocol';
import type { SoundTeller } from '@/components/microphone/sounds/sound-link';
import { noScores, type KindScores } from '@/lib/sound';
import { FakeEngine, sound } from '../microphone/fake-engine';

/** Says "next" between two stretches of room, with the classifier as given, and gives what went out. */
const sayNext = async (sounds?: SoundTeller): Promise<readonly FromWorker[]> => {
  const engine = new FakeEngine();
  const told: FromWorker[] = [];
  const hearing = new Hearing({
    engine,
    rateHz: 16_000,
    tell: (message) => told.push(message),
    now: () => 0,
    ...(sounds === undefined ? {} : { sounds }),
  });
  hearing.listenFor({ kind: 'grammars', generation: 1, grammars: [['next']] });
  const speak = async (ms: number, db: number): Promise<void> => {
    for (const frame of sound(ms, db)) hearing.fromMicrophone(frame);
    for (let i = 0; i < 20_000; i += 1) await Promise.resolve();
  };
  await speak(1500, -60);
  engine.latest.words = ['next'];
  await speak(400, -25);
  await speak(500, -60);
  return told;
};

const teller = (scores: KindScores | undefined, ready = true): SoundTeller => ({
  ready,
  tell: () => Promise.resolve(scores),
});
const trusts = (told: readonly FromWorker[]): unknown[] =>
  told.flatMap((one) => (one.kind === 'utterance' ? [one.utterance.trust] : []));

describe('an utterance', () => {
  it('comes with what the bay’s sound makes of it', async () => {
    const wrench = { ...noScores, impactTool: 0.9, speech: 0.3 };
    expect(trusts(await sayNext(teller(wrench)))).toEqual(['tooLoud']);
    expect(trusts(await sayNext(teller({ ...noScores, speech: 0.9 })))).toEqual(['trusted']);
  });

  it('comes all the same without a classifier, with one that is not there yet, and with one that fails', async () => {
    expect(trusts(await sayNext())).toEqual([undefined]);
    expect(trusts(await sayNext(teller(undefined, false)))).toEqual(['trusted']);
    expect(trusts(await sayNext(teller(undefined)))).toEqual(['trusted']);
  });

  it('comes after the change of the bay that it was judged by', async () => {
    const told = await sayNext(teller({ ...noScores, impactTool: 0.9 }));
    const kinds = told.map(({ kind }) => kind).filter((kind) => kind !== 'level');
    expect(kinds.indexOf('noise')).toBeLessThan(kinds.indexOf('utterance'));
  });
});
