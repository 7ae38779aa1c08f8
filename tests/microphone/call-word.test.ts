import { describe, expect, it } from 'vitest';
import { Understander } from '@/components/microphone/understander';
import type { Utterance } from '@/components/microphone/protocol';
import type { Understanding, VoiceContext } from '@/lib/voice';

const commands: VoiceContext = {
  intents: ['next', 'repeat', 'takeBack'],
  labels: [],
  steps: 9,
  callWord: 'jupiter',
};
const question: VoiceContext = { ...commands, intents: ['yes', 'no'] };

/** A kiosk in a bay that is called “jupiter”; its sound is at 100 s. */
const setUp = () => {
  const did: string[] = [];
  const note = (understanding: Understanding): void => {
    did.push(understanding.kind === 'nothing' ? understanding.why : understanding.intent.kind);
  };
  const understander = new Understander({
    onUnderstood: ({ understanding }) => {
      note(understanding);
    },
    onPreview: () => undefined,
  });
  understander.attend(commands, 'step 1');
  const time = (atS: number): void => {
    understander.tick({ atS, arrivedMs: 0 }, { speaking: false, stillS: 5 });
  };
  const hear = (say: string, startS: number): void => {
    const words = say.split(' ').map((text, i) => ({
      text,
      confidence: 1,
      startS: startS + i * 0.4,
      endS: startS + i * 0.4 + 0.3,
    }));
    const endS = (words.at(-1)?.endS ?? startS) + 0.3;
    const utterance: Utterance = {
      generation: understander.plan?.generation ?? 0,
      passes: [{ words }, { words }],
      ending: 'pause',
      startS,
      endS,
      decidedAtMs: 0,
    };
    understander.hear(utterance);
    time(endS + 3);
  };
  time(100);
  return { did, understander, hear, time };
};

describe('in a bay with a call word', () => {
  it('a phrase acts behind it, and for a few seconds after one that acted', () => {
    const { did, hear } = setUp();
    hear('next', 101);
    hear('jupiter next', 110);
    hear('repeat', 115);
    hear('repeat', 130);
    expect(did).toEqual(['begin with “jupiter”', 'next', 'repeat', 'begin with “jupiter”']);
  });

  it('talk neither acts nor keeps the kiosk waiting for a phrase', () => {
    const { did, hear } = setUp();
    hear('jupiter next', 101);
    hear('where is the oil', 120);
    hear('repeat', 125);
    expect(did).toEqual(['next', 'the kiosk was not called', 'begin with “jupiter”']);
  });

  it('a question is answered without it while it is fresh', () => {
    const { did, understander, hear, time } = setUp();
    understander.attend(question, 'question 1');
    hear('yes', 104);
    understander.attend(commands, 'step 1');
    time(200);
    understander.attend(question, 'question 2');
    hear('yes', 215);
    hear('jupiter yes', 220);
    expect(did).toEqual(['yes', 'begin with “jupiter”', 'yes']);
  });

  it('a recogniser that begins its time anew needs the word again', () => {
    const { did, hear, time } = setUp();
    hear('jupiter next', 101);
    time(1);
    hear('repeat', 2);
    expect(did).toEqual(['next', 'begin with “jupiter”']);
  });
});
