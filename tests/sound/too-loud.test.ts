import { describe, expect, it } from 'vitest';
import type { Utterance } from '@/components/microphone/protocol';
import { Understander } from '@/components/microphone/understander';

const utterance = (text: string, trust: NonNullable<Utterance['trust']>): Utterance => ({
  generation: 1,
  passes: [
    {
      words: text
        .split(' ')
        .map((word, i) => ({ text: word, confidence: 1, startS: i, endS: i + 1 })),
    },
  ],
  ending: 'pause',
  startS: 0,
  endS: 2,
  trust,
  decidedAtMs: 0,
});

const setUp = () => {
  const meant: string[] = [];
  const understander = new Understander({
    onUnderstood: ({ understanding: one }) =>
      meant.push(one.kind === 'nothing' ? `${one.said}: ${one.why}` : one.intent.kind),
    onPreview: () => undefined,
  });
  understander.attend({ intents: ['next', 'value'], labels: [], steps: 0 }, 'step 1');
  return { meant, understander };
};

describe('what was said', () => {
  it('acts where it can be trusted', () => {
    const { meant, understander } = setUp();
    understander.hear(utterance('next', 'trusted'));
    expect(meant).toEqual(['next']);
  });

  it('does not act under a loud tool, and the speaker is told to say it again', () => {
    const { meant, understander } = setUp();
    understander.hear(utterance('next', 'tooLoud'));
    expect(meant).toEqual(['next: too loud, say it again']);
  });

  it('is nothing where only the tool was there', () => {
    const { meant, understander } = setUp();
    understander.hear(utterance('next', 'toolOnly'));
    expect(meant).toEqual([]);
  });

  it('is not taken for a whole number when a tool hid its second half', () => {
    const { meant, understander } = setUp();
    understander.hear(utterance('one hundred', 'trusted'));
    understander.hear(utterance('twenty', 'toolOnly'));
    understander.settle({ atS: 9, arrivedMs: 0 });
    expect(meant).toEqual(['twenty: too loud, say it again']);
  });
});
