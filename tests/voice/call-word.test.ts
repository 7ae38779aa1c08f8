import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  callWords,
  everyPhrase,
  listeningPlan,
  numberWords,
  phoneDistance,
  phonesOf,
  phraseTable,
  understandCalled,
  type Heard,
  type VoiceContext,
} from '@/lib/voice';
import { talkWords } from '@/lib/voice/talk-words';

/** Evenly spoken, clear words from a time on, s; `~` is a pause of a second. */
const heard = (say: string, fromS = 100): Heard => {
  let at = fromS;
  const words = say.split(' ').flatMap((text) => {
    if (text === '~') at += 1;
    const startS = at;
    if (text !== '~') at += 0.35;
    return text === '~' ? [] : [{ text, confidence: 1, startS, endS: startS + 0.3 }];
  });
  return { words, text: words.map(({ text }) => text).join(' ') };
};

const context: VoiceContext = { ...everyPhrase, callWord: 'jupiter' };
const outcome = (main: string, second = main, openUntilS = 0) => {
  const understood = understandCalled(heard(main), heard(second), context, openUntilS);
  return understood.kind === 'nothing' ? understood.why : understood.intent;
};

describe('a kiosk that is called by a word', () => {
  it.each([
    ['jupiter next', { kind: 'next' }],
    ['jupiter ~ next', { kind: 'next' }],
    ['[unk] jupiter next', { kind: 'next' }],
    ['jupiter torqued one twenty', { kind: 'value', value: 120 }],
    ['the oil is out ~ jupiter repeat', { kind: 'repeat' }],
  ])('does what is said behind it: %s', (say, intent) => {
    expect(outcome(say)).toEqual(intent);
  });

  it.each([
    ['next', 'begin with “jupiter”'],
    ['next jupiter', 'the kiosk was not called'],
    ['he said jupiter next', 'the kiosk was not called'],
    ['where is the oil', 'the kiosk was not called'],
    ['jupiter where is the oil', 'no phrase that is known here'],
    ['jupiter', 'nothing was said'],
  ])('does nothing else: %s', (say, why) => {
    expect(outcome(say)).toBe(why);
  });

  it('does nothing when only one recogniser heard it called', () => {
    expect(outcome('jupiter next', 'computer next')).toBe('the kiosk was not called');
    expect(outcome('next', 'jupiter next')).toBe('the kiosk was not called');
  });

  it('needs no call while it waits for what follows', () => {
    expect(outcome('next', 'next', 100)).toEqual({ kind: 'next' });
    expect(outcome('next', 'next', 99.9)).toBe('begin with “jupiter”');
    expect(outcome('where is the oil', 'where is the oil', 100)).toBe(
      'no phrase that is known here',
    );
  });

  it('says what was heard, with the call', () => {
    expect(understandCalled(heard('jupiter next'), undefined, context, 0)).toMatchObject({
      said: 'jupiter next',
      certainty: 'sure',
    });
  });

  it('listens for the word with both recognisers, and only where it is called so', () => {
    const called = listeningPlan(context);
    expect(called.main).toContain('jupiter');
    expect(called.second).toContain('jupiter');
    const plain = listeningPlan(everyPhrase);
    for (const word of callWords)
      expect([...plain.main, ...(plain.second ?? [])]).not.toContain(word);
  });
});

describe.each(callWords)('the call word %s', (word) => {
  it('is known to the model, and is no word of phrases, numbers or talk', () => {
    const words = readFileSync('models/speech/en-bay-3/words.txt', 'utf8').split('\n');
    expect(words).toContain(word);
    const phrases = phraseTable
      .flatMap(({ say }) => say)
      .join(' ')
      .split(' ');
    expect([...phrases, ...numberWords, ...talkWords]).not.toContain(word);
  });

  it('lies four phones at least from every phrase, every number word and the other call words', () => {
    const others = [
      ...phraseTable.flatMap(({ say }) => say).filter((say) => !say.includes('{')),
      ...numberWords,
      ...callWords.filter((other) => other !== word),
    ];
    const near = others.filter(
      (other) => phoneDistance(phonesOf(word) ?? [], phonesOf(other) ?? []) < 4,
    );
    expect(near).toEqual([]);
  });
});
