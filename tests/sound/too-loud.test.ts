import { describe, expect, it } from 'vitest';
import type { Utterance } from '@/components/microphone/protocol';
import { Understander } from '@/components/microphone/understander';

const utterance = (
  text: string,
  trust: NonNullable<Utterance['trust']>,
  startS = 0,
): Utterance => ({
  generation: 1,
  passes: [
    {
      words: text.split(' ').map((word, i) => ({
        text: word,
        confidence: 1,
        startS: startS + i,
        endS: startS + i + 1,
      })),
    },
  ],
  ending: 'pause',
  startS,
  endS: startS + 2,
  trust,
  decidedAtMs: 0,
});

const setUp = () => {
  const meant: string[] = [];
  const understander = new Understander({
    onUnderstood: ({ understanding: one }) =>
      meant.push(
        one.kind === 'nothing'
          ? `${one.said}: ${one.why}`
          : one.intent.kind === 'value'
            ? `${one.intent.value} ${one.certainty}`
            : one.intent.kind,
      ),
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

  it('is read back under a loud tool if it is a number', () => {
    const { meant, understander } = setUp();
    understander.hear(utterance('one twenty', 'tooLoud'));
    understander.settle({ atS: 9, arrivedMs: 0 });
    expect(meant).toEqual(['120 unsure']);
  });

  it('is read back if it is a number of which a tool hid the first half', () => {
    for (const trust of ['tooLoud', 'toolOnly'] as const) {
      const { meant, understander } = setUp();
      understander.hear(utterance('one', trust));
      understander.settle({ atS: 1.5, arrivedMs: 0 });
      meant.length = 0;
      understander.hear(utterance('three three', 'trusted', 2.2));
      understander.settle({ atS: 9, arrivedMs: 0 });
      expect(meant).toEqual(['33 unsure']);
    }
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
