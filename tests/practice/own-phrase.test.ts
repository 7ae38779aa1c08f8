import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import {
  choicesFor,
  leastPhonesApart,
  meaningOf,
  otherWordings,
  practicePhrases,
  whyNotOwn,
} from '@/lib/practice';
import {
  everyPhrase,
  grammarFor,
  listeningPlan,
  matchPhrase,
  numberWords,
  phoneDistance,
  phonesOf,
  phraseTable,
  type OwnPhrase,
  type PersonalVoice,
  type VoiceContext,
} from '@/lib/voice';
import { pronunciations } from '@/lib/voice/pronunciations';

const next = { kind: 'next' } as const;

describe('words of one’s own', () => {
  it.each([
    ['carry on', undefined],
    ['next step', 'it is a phrase already'],
    ['step', 'it is too like “next step”'],
    ['carry on next', 'it is too like “next”'],
    ['four forward', 'it holds a word of numbers'],
    ['fluid ounce', 'it holds a unit'],
    ['torque', 'it is too like “back”'],
    ['found', 'it is too like “no”'],
    ['once fitted', 'these words are not known here'],
    ['fresh pattern another original', undefined],
    ['fresh pattern another original continue', 'these words are not known here'],
  ])('“%s” for next: %s', (say, why) => {
    expect(whyNotOwn(say, next)).toBe(why);
  });

  it('lie apart from those that were chosen for something else', () => {
    const taken: readonly OwnPhrase[] = [{ say: 'original kept', intent: { kind: 'ready' } }];
    expect(whyNotOwn('original kept', next, taken)).toBe('it is too like “original kept”');
    expect(whyNotOwn('carry on', next, taken)).toBeUndefined();
  });

  it('are none for what destroys, closes or answers, nor for numbers', () => {
    for (const kind of ['takeBack', 'leaveOut', 'reopen', 'closeJob', 'yes', 'no'] as const)
      expect(whyNotOwn('carry on', { kind })).toBe('this is said in the same words by everybody');
    for (const say of ['take that back', 'yes', 'no', 'torqued five'])
      expect(choicesFor(say)).toEqual([]);
  });
});

describe('the practised phrases', () => {
  const known = new Set(
    readFileSync('models/speech/en-bay-3/words.txt', 'utf8')
      .split('\n')
      .map((line) => line.split(' ')[0] ?? ''),
  );
  const offered = practicePhrases.flatMap(({ say, others }) =>
    others.map((other) => ({ say, other })),
  );

  it.each(practicePhrases.map(({ say }) => say))('“%s” means something everywhere', (say) => {
    expect(meaningOf(say)).toBeDefined();
  });

  it.each(offered)(
    '“$other” may stand for “$say”, and the model knows its words',
    ({ say, other }) => {
      expect(choicesFor(say)).toContain(other);
      expect(other.split(' ').filter((word) => !known.has(word))).toEqual([]);
    },
  );

  it('may all be replaced at once without one being like another', () => {
    const chosen = practicePhrases.reduce<readonly OwnPhrase[]>((own, { say, others }) => {
      const intent = meaningOf(say);
      const [first] = choicesFor(say, own);
      expect(first === undefined).toBe(others.length === 0);
      return first === undefined || intent === undefined ? own : [...own, { say: first, intent }];
    }, []);
    expect(chosen).toHaveLength(10);
  });

  it('have other wordings that everybody may say', () => {
    expect(otherWordings('next')).toEqual(['done', 'next step', 'step done']);
    expect(otherWordings('torqued five')).toEqual([]);
  });
});

describe('in the grammar', () => {
  const voice: PersonalVoice = {
    own: [{ say: 'carry on', intent: next }],
    leastConfidence: 0,
    leastNumberConfidence: 0,
    readBack: [],
  };
  const context: VoiceContext = { ...everyPhrase, voice };

  it('they are listened for by both recognisers, where their meaning may be said', () => {
    const { main, second } = listeningPlan(context);
    expect(main).toContain('carry on');
    expect(second).toContain('carry on');
    expect(grammarFor({ ...context, intents: ['yes', 'no'] })).not.toContain('carry on');
    expect(grammarFor(everyPhrase)).not.toContain('carry on');
  });

  it('they take nothing from what everybody says', () => {
    const own = [{ say: 'done', intent: { kind: 'ready' } as const }];
    const wrong = { ...context, voice: { ...voice, own } };
    expect(matchPhrase(['done'], wrong)).toMatchObject({ intent: next });
  });

  it('they mean what they stand for, only with this person', () => {
    expect(matchPhrase(['carry', 'on'], context)).toMatchObject({ kind: 'phrase', intent: next });
    expect(matchPhrase(['carry', 'on'], everyPhrase)).toEqual({ kind: 'none' });
    expect(matchPhrase(['carry', 'on'], { ...context, intents: ['yes'] })).toEqual({
      kind: 'none',
    });
  });
});

test('no words that are allowed equal, begin, end or sound like a phrase of another meaning or a number', () => {
  const words = fc.constantFrom(...Object.keys(pronunciations));
  const intents = fc.constantFrom(
    ...phraseTable.flatMap((row) => ('intent' in row ? [row.intent] : [])),
  );
  const fixed = phraseTable.flatMap((row) =>
    row.say
      .filter((say) => !say.includes('{'))
      .map((say) => ({ say, intent: 'intent' in row ? row.intent : undefined })),
  );
  let allowed = 0;

  fc.assert(
    fc.property(fc.array(words, { minLength: 1, maxLength: 4 }), intents, (chosen, intent) => {
      const say = chosen.join(' ');
      if (whyNotOwn(say, intent) !== undefined) return;
      allowed += 1;
      const voice = {
        own: [{ say, intent }],
        leastConfidence: 0,
        leastNumberConfidence: 0,
        readBack: [],
      };
      for (const other of fixed) {
        expect(`${say} `.startsWith(`${other.say} `)).toBe(false);
        expect(` ${other.say}`.endsWith(` ${say}`)).toBe(false);
        if (JSON.stringify(other.intent) !== JSON.stringify(intent))
          expect(
            phoneDistance(phonesOf(say) ?? [], phonesOf(other.say) ?? []),
          ).toBeGreaterThanOrEqual(leastPhonesApart);
      }
      expect(chosen.filter((word) => numberWords.includes(word))).toEqual([]);
      expect(matchPhrase(chosen, { ...everyPhrase, voice })).toMatchObject({ intent });
    }),
    { numRuns: 1000 },
  );
  expect(allowed).toBeGreaterThan(30);
});
