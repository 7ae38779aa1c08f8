import { describe, expect, it } from 'vitest';
import {
  beginPractice,
  choices,
  mostTries,
  ownOf,
  personalVoice,
  practicePhrases,
  practiceSchema,
  practise,
  toSay,
  troubled,
  type PracticeInput,
  type PracticeState,
} from '@/lib/practice';
import { doubts, everyPhrase, understand } from '@/lib/voice';

/** What the kiosk understands of clear words, with the words that the practice listens for beside everybody's. */
const hears = (state: PracticeState, say: string, confidence = 1): PracticeInput => ({
  kind: 'heard',
  understanding: understand(
    {
      text: say,
      words: say
        .split(' ')
        .map((text, i) => ({ text, confidence, startS: i * 0.4, endS: i * 0.4 + 0.3 })),
    },
    {
      ...everyPhrase,
      voice: { own: ownOf(state), leastConfidence: 0, leastNumberConfidence: 0, readBack: [] },
    },
  ),
});

const say = (state: PracticeState, words: string, confidence?: number): PracticeState =>
  practise(practise(state, hears(state, words, confidence)), { kind: 'goOn' });

/** The whole list, said as it stands but for some phrases that come out wrong both times. */
const wholePractice = (wrong: Readonly<Record<string, string>> = {}): PracticeState => {
  let state = beginPractice();
  for (let asked = toSay(state); asked !== undefined; asked = toSay(state))
    state = say(state, wrong[asked] ?? asked);
  return state;
};

describe('a practice', () => {
  it('asks for each phrase once when each is understood', () => {
    const state = wholePractice();
    expect(state.at).toEqual({ kind: 'results' });
    expect(state.phrases.map(({ say: asked }) => asked)).toEqual(
      practicePhrases.map(({ say: asked }) => asked),
    );
    expect(state.phrases.every(({ tries }) => tries.length === 1)).toBe(true);
    expect(troubled(state)).toEqual([]);
  });

  it('asks for one a second time that was not, and then goes on', () => {
    let state = say(beginPractice(), 'back');
    expect(toSay(state)).toBe('next');
    state = say(state, 'next', 0.2);
    expect(toSay(state)).toBe('go back');
    expect(state.phrases[0]?.tries).toEqual([
      { as: 'other', heard: 'back', confidence: 1 },
      { as: 'unclear', heard: 'next', confidence: 0.2 },
    ]);
  });

  it('shows how it was heard before it listens again', () => {
    const first = practise(beginPractice(), hears(beginPractice(), 'next'));
    expect(first.at).toMatchObject({
      kind: 'phrase',
      index: 0,
      last: { as: 'right', heard: 'next' },
    });
    expect(practise(first, hears(first, 'go back'))).toEqual(first);
  });

  it('does not count noise, nor what a tool hid', () => {
    const begun = beginPractice();
    for (const why of [doubts.silence, doubts.tool]) {
      const said = why === doubts.silence ? '' : 'next';
      const input = { kind: 'heard', understanding: { kind: 'nothing', why, said } } as const;
      expect(practise(begun, input)).toEqual(begun);
    }
  });

  it('leaves a phrase that is passed over untried', () => {
    const state = practise(beginPractice(), { kind: 'skip' });
    expect(toSay(state)).toBe('go back');
    expect(state.phrases[0]?.tries).toEqual([]);
  });

  it('may be ended early', () => {
    const state = practise(say(beginPractice(), 'next'), { kind: 'end' });
    expect(state.at).toEqual({ kind: 'results' });
    expect(state.phrases.filter(({ tries }) => tries.length > 0)).toHaveLength(1);
  });

  it('names what does not work, the worst first', () => {
    const state = wholePractice({ reused: 'replaced', 'torqued five': 'torqued nine' });
    expect(troubled(state).map(({ say: asked }) => asked)).toEqual(['torqued five', 'reused']);
  });
});

describe('words of one’s own', () => {
  const failed = wholePractice({ next: 'back', yes: 'no' });
  const choose = { kind: 'choose', insteadOf: 'next', say: 'carry on' } as const;

  it('are offered where a phrase failed, but not for yes', () => {
    const [first, second] = troubled(failed);
    expect([first?.say, second?.say]).toEqual(['next', 'yes']);
    expect(first === undefined ? [] : choices(failed, first)).toEqual([
      'carry on',
      'go forward',
      'continue',
      'onwards',
    ]);
    expect(second === undefined ? undefined : choices(failed, second)).toEqual([]);
  });

  it('are kept when they were understood twice in a row', () => {
    let state = practise(failed, choose);
    expect(toSay(state)).toBe('carry on');
    state = say(state, 'carry on');
    expect(state.own).toEqual([]);
    state = say(state, 'carry on');
    expect(state.at).toEqual({ kind: 'results' });
    expect(state.own).toEqual([{ insteadOf: 'next', say: 'carry on' }]);
    expect(mostTries).toBe(2);
  });

  it('are not kept when they were misheard, or left', () => {
    const tried = practise(failed, choose);
    for (const state of [
      say(tried, 'next'),
      say(say(tried, 'carry on'), 'back'),
      practise(tried, { kind: 'skip' }),
    ]) {
      expect(state.at).toEqual({ kind: 'results' });
      expect(state.own).toEqual([]);
    }
  });

  it('may be given up again', () => {
    const kept = say(say(practise(failed, choose), 'carry on'), 'carry on');
    expect(practise(kept, { kind: 'drop', insteadOf: 'next' }).own).toEqual([]);
  });

  it('cannot be any others than those offered', () => {
    for (const wrong of [
      { kind: 'choose', insteadOf: 'yes', say: 'carry on' },
      { kind: 'choose', insteadOf: 'next', say: 'bolt five' },
      { kind: 'choose', insteadOf: 'nothing', say: 'carry on' },
    ] as const)
      expect(practise(failed, wrong)).toEqual(failed);
  });
});

describe('the record', () => {
  const record = (own: readonly { insteadOf: string; say: string }[]) => ({
    id: '0195a000-0000-7000-8000-000000000001',
    model: 'en-bay-3',
    phrases: wholePractice({ next: 'back' }).phrases,
    own,
  });

  it('is read back as it was written', () => {
    const written = record([{ insteadOf: 'next', say: 'carry on' }]);
    const read = practiceSchema.parse(JSON.parse(JSON.stringify(written)));
    expect(read).toEqual(written);
    expect(personalVoice(read)).toEqual({
      own: [{ say: 'carry on', intent: { kind: 'next' } }],
      leastConfidence: 0.9,
      leastNumberConfidence: 0,
      readBack: [],
    });
  });

  it.each([
    ['words that are not offered', [{ insteadOf: 'next', say: 'close the job' }]],
    ['words for what answers', [{ insteadOf: 'yes', say: 'carry on' }]],
    [
      'the same words twice',
      [
        { insteadOf: 'next', say: 'carry on' },
        { insteadOf: 'next', say: 'carry on' },
      ],
    ],
  ])('cannot hold %s', (_, own) => {
    expect(practiceSchema.safeParse(record(own)).success).toBe(false);
  });
});
