import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import {
  personalVoice,
  practicePhrases,
  worksOf,
  type PracticeRecord,
  type Try,
} from '@/lib/practice';
import { everyPhrase, understand, understandPair, type Heard } from '@/lib/voice';

const right: Try = { as: 'right', heard: '', confidence: 1 };
const other = (heard: string, confidence: number): Try => ({ as: 'other', heard, confidence });
const nothing: Try = { as: 'nothing', heard: 'where is it', confidence: 0 };
const unclear: Try = { as: 'unclear', heard: 'torqued five', confidence: 0.9 };

const practice = (
  phrases: Readonly<Record<string, readonly Try[]>>,
  own: PracticeRecord['own'] = [],
): PracticeRecord => ({
  id: '0195a000-0000-7000-8000-000000000001',
  model: 'en-bay-3',
  phrases: Object.entries(phrases).map(([say, tries]) => ({ say, tries: [...tries] })),
  own,
});

const heard = (say: string, confidence = 1): Heard => ({
  text: say,
  words: say
    .split(' ')
    .map((text, i) => ({ text, confidence, startS: i * 0.4, endS: i * 0.4 + 0.3 })),
});

describe('how a phrase works', () => {
  it.each([
    ['next', [right], 'works'],
    ['next', [nothing, right], 'sometimes'],
    ['next', [nothing, other('back', 0.4)], 'fails'],
    ['next', [], 'notTried'],
    ['torqued five', [unclear, unclear], 'readBack'],
    ['torqued five', [unclear, right], 'readBack'],
    ['torqued five', [other('torqued nine', 1), right], 'sometimes'],
    [
      'next',
      [
        { ...unclear, heard: 'next' },
        { ...unclear, heard: 'next' },
      ],
      'fails',
    ],
  ] as const)('“%s” %j: %s', (say, tries, works) => {
    expect(worksOf({ say, tries: [...tries] })).toBe(works);
  });
});

describe('a voice that is heard well', () => {
  it('changes nothing', () => {
    expect(personalVoice(practice({ next: [right], 'torqued five': [nothing, right] }))).toEqual({
      own: [],
      leastConfidence: 0,
      leastNumberConfidence: 0,
      readBack: [],
    });
  });
});

describe('a voice that was mistaken', () => {
  it('has to be surer than the surest mistake', () => {
    const voice = personalVoice(
      practice({ next: [other('back', 0.7), right], repeat: [other('reused', 0.4), right] }),
    );
    expect(voice.leastConfidence).toBeCloseTo(0.71);
    expect(voice.leastNumberConfidence).toBe(0);
    const context = { ...everyPhrase, voice };
    expect(understand(heard('next', 0.7), context)).toMatchObject({ certainty: 'unsure' });
    expect(understand(heard('next', 0.72), context)).toMatchObject({ certainty: 'sure' });
    expect(understand(heard('next', 0.7), everyPhrase)).toMatchObject({ certainty: 'sure' });
  });

  it('has phrases asked for again up to nine tenths, and no further', () => {
    expect(personalVoice(practice({ next: [other('back', 1)] })).leastConfidence).toBe(0.9);
  });

  it('has the numbers read back that were said and heard, however sure they are', () => {
    const voice = personalVoice(practice({ 'torqued five': [other('torqued nine', 1), right] }));
    expect(voice.readBack).toEqual(['five', 'nine']);
    expect(voice.leastNumberConfidence).toBe(1);
    const context = { ...everyPhrase, voice };
    for (const say of ['torqued twenty five', 'nine', 'torqued nine point two liters'])
      expect(understandPair(heard(say), heard(say), context)).toMatchObject({
        certainty: 'unsure',
        why: 'this number was mistaken in your voice practice',
      });
    expect(understandPair(heard('torqued eight'), undefined, context)).toMatchObject({
      certainty: 'sure',
    });
  });

  it('may say words of its own', () => {
    const { own } = personalVoice(
      practice({ next: [nothing, nothing] }, [{ insteadOf: 'next', say: 'carry on' }]),
    );
    expect(own).toEqual([{ say: 'carry on', intent: { kind: 'next' } }]);
  });
});

test('whatever a practice gave, nothing is taken as sure that the shop would not take as sure', () => {
  const tries = fc.array(
    fc.record({
      as: fc.constantFrom('right', 'unclear', 'other', 'nothing'),
      heard: fc.constantFrom('torqued nine', 'torqued fifty', 'next', 'back', 'yes'),
      confidence: fc.double({ min: 0, max: 1, noNaN: true }),
    }),
    { maxLength: 2 },
  );
  const says = practicePhrases.map(({ say }) => say);
  let unsure = 0;
  fc.assert(
    fc.property(
      fc.dictionary(fc.constantFrom(...says), tries),
      fc.constantFrom(...says),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (practised, say, confidence) => {
        const voice = personalVoice(practice(practised));
        const shop = understand(heard(say, confidence), everyPhrase);
        const mine = understand(heard(say, confidence), { ...everyPhrase, voice });
        expect(mine.kind).toBe(shop.kind);
        if (shop.kind === 'nothing' || mine.kind === 'nothing') return;
        expect(mine.intent).toEqual(shop.intent);
        if (shop.certainty === 'sure') return;
        unsure += 1;
        expect(mine.certainty).toBe('unsure');
      },
    ),
    { numRuns: 500 },
  );
  expect(unsure).toBeGreaterThan(100);
});
