import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  asksBack,
  everyPhrase,
  grammarFor,
  listeningPlan,
  matchPhrase,
  phraseTable,
  rowKind,
  spokenForms,
  type VoiceContext,
} from '@/lib/voice';

const modelWords = (): ReadonlySet<string> => {
  const lines = readFileSync('models/speech/en-bay-3/words.txt', 'utf8').split('\n');
  return new Set(lines.map((line) => line.split(' ')[0] ?? ''));
};

const wordsOf = (grammar: readonly string[]): ReadonlySet<string> =>
  new Set(grammar.flatMap((phrase) => phrase.split(' ')));

const plans = (context: VoiceContext): readonly (readonly string[])[] => {
  const { main, second } = listeningPlan(context);
  return second ? [main, second] : [main];
};

const yesOrNo: VoiceContext = { intents: ['yes', 'no'], labels: [], steps: 9 };

describe('the grammar', () => {
  it('holds only words that the model knows: others would be dropped without a word', () => {
    const known = modelWords();
    expect(known.size).toBeGreaterThan(20_000);
    for (const grammar of plans(everyPhrase))
      expect([...wordsOf(grammar)].filter((word) => word !== '[unk]' && !known.has(word))).toEqual(
        [],
      );
  });

  it('always holds every number word and the unknown sound, whatever is asked', () => {
    for (const grammar of plans(yesOrNo)) {
      expect(grammar).toContain('[unk]');
      const words = wordsOf(grammar);
      const needed = [0, 0.5, 12.5, 17, 120, 1500, 1999].flatMap(spokenForms).join(' ').split(' ');
      expect(needed.filter((word) => !words.has(word))).toEqual([]);
    }
  });

  it('makes no number likelier for the place where it is asked', () => {
    const numbersIn = (context: VoiceContext): readonly string[] =>
      grammarFor(context).filter(
        (p) => /^(one|two|twenty|hundred|point)\b/.test(p) && p !== 'one left over',
      );
    expect(numbersIn({ ...everyPhrase, quantity: 'torque', noun: 'bolt' })).toEqual(
      numbersIn({ ...yesOrNo, quantity: 'volume' }),
    );
  });

  it('holds the phrases that may be said now, and no others', () => {
    const grammar = grammarFor(yesOrNo);
    expect(grammar).toContain('yes');
    expect(grammar).not.toContain('next');
    expect(grammar).not.toContain('close the job');
    expect(grammar).not.toContain('bolt');
    expect(grammarFor({ ...yesOrNo, labels: ['1'], noun: 'nut' })).toContain('nut');
  });

  it('holds one spelling of words that sound alike', () => {
    for (const grammar of plans(everyPhrase)) {
      expect(wordsOf(grammar)).not.toContain('for');
      expect(wordsOf(grammar)).not.toContain('to');
    }
    expect(grammarFor(everyPhrase)).toContain('waiting four parts');
  });
});

describe('the phrase table', () => {
  const fixed = phraseTable.flatMap((row) =>
    row.say.filter((say) => !say.includes('{')).map((say) => ({ say, row })),
  );

  it('says no two things with the same words', () => {
    expect(new Set(fixed.map(({ say }) => say)).size).toBe(fixed.length);
  });

  it.each(fixed.map(({ say, row }) => [say, row] as const))(
    '%s is read as its own row',
    (say, row) => {
      expect(matchPhrase(say.split(' '), everyPhrase)).toEqual({
        kind: 'phrase',
        intent: 'intent' in row ? row.intent : undefined,
        row,
      });
    },
  );

  it('takes at least three words for what is hard to undo, and always asks back', () => {
    const hard = phraseTable.filter((row) =>
      ['takeBack', 'closeJob', 'leaveOut', 'reopen'].includes(rowKind(row)),
    );
    expect(hard.map(rowKind)).toEqual(['takeBack', 'leaveOut', 'reopen', 'reopen', 'closeJob']);
    for (const row of hard) {
      expect(asksBack(rowKind(row))).toBe(true);
      for (const say of row.say) expect(say.split(' ').length).toBeGreaterThanOrEqual(3);
    }
  });

  it('becomes none that is hard to undo when a word of another is lost', () => {
    const hard = new Set(fixed.filter(({ row }) => asksBack(rowKind(row))).map(({ say }) => say));
    for (const { say } of fixed.filter(({ row }) => !asksBack(rowKind(row)))) {
      const words = say.split(' ');
      const shorter = words.map((_, lost) => words.filter((_word, at) => at !== lost).join(' '));
      expect(shorter.filter((rest) => hard.has(rest))).toEqual([]);
    }
  });
});
