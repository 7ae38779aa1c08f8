import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseNumber, spokenForms } from '@/lib/voice';

const parse = (words: string, pairs?: 'whole' | 'either') => parseNumber(words.split(' '), pairs);

describe('a number has one meaning in the shop', () => {
  it.each([
    ['zero', 0],
    ['seven', 7],
    ['nineteen', 19],
    ['thirty two', 32],
    ['one hundred', 100],
    ['a hundred', 100],
    ['one hundred and twenty', 120],
    ['a hundred twenty', 120],
    ['one twenty', 120],
    ['one two zero', 120],
    ['one two oh', 120],
    ['one twenty five', 125],
    ['one hundred and five', 105],
    ['one oh five', 105],
    ['two fifty', 250],
    ['five five', 55],
    ['zero seven zero', 70],
    ['nine nine four four', 9944],
    ['fifteen hundred', 1500],
    ['nineteen hundred and fifty', 1950],
    ['two thousand', 2000],
    ['one thousand two hundred', 1200],
    ['a thousand and five', 1005],
    ['one thousand two hundred and thirty four', 1234],
    ['twelve point five', 12.5],
    ['twelve point oh five', 12.05],
    ['twelve point seven five', 12.75],
    ['twelve point seventy five', 12.75],
    ['point eight', 0.8],
    ['zero point eight', 0.8],
    ['oh point eight', 0.8],
    ['one twenty point five', 120.5],
    ['twelve and a half', 12.5],
    ['one and a half', 1.5],
    ['a half', 0.5],
    ['half', 0.5],
  ])('%s is %d', (words, value) => {
    expect(parse(words)).toEqual({ kind: 'number', value });
  });
});

describe('words with several meanings ask back', () => {
  it.each([
    ['nineteen fifty', [1950, 19.5]],
    ['twelve thirty three', [1233, 12.33]],
    ['nineteen oh five', [1905, 19.05]],
    ['one hundred and a half', [100.5, 150]],
    ['oh five', [5, 0.5]],
    ['oh one two', [12]],
    ['hundred and twenty', [120]],
  ])('%s may be %j', (words, candidates) => {
    expect(parse(words)).toEqual({ kind: 'ambiguous', candidates });
  });

  it('a pair may be a decimal where decimals are spoken so', () => {
    expect(parse('two fifty', 'either')).toEqual({ kind: 'ambiguous', candidates: [250, 2.5] });
    expect(parse('one two five', 'either')).toEqual({ kind: 'number', value: 125 });
  });
});

describe('words that are no number', () => {
  it.each([
    'oh',
    'a',
    'and',
    'point',
    'hundred and',
    'thirty two point',
    'one hundred and',
    'twenty twelve five',
    'five ten fifteen',
    'one two three four five',
    'fifty two nineteen thirty',
    'five twenty seven sixty six',
    'two two point five five five five',
    'ten hundred',
    'and a half',
    'zero hundred',
    'thirty eleven point five',
    'twenty zero',
    'twenty ten five',
  ])('%s', (words) => {
    expect(parse(words)).toEqual({ kind: 'none' });
  });
});

describe('a number spoken in any form', () => {
  const roundTrip = (n: number): string[] =>
    spokenForms(n).filter((form) => {
      const read = parse(form);
      if (read.kind === 'number') return read.value !== n;
      return read.kind === 'none' || !read.candidates.includes(n);
    });
  const ambiguousForms = (n: number): readonly string[] =>
    spokenForms(n).filter((form) => parse(form).kind === 'ambiguous');

  it('is the same number, for every whole number from 0 to 2000', () => {
    for (let n = 0; n <= 2000; n += 1) expect(roundTrip(n)).toEqual([]);
  });

  it('is the same number, for every half and tenth up to 200', () => {
    for (let tenths = 0; tenths <= 2000; tenths += 1) expect(roundTrip(tenths / 10)).toEqual([]);
  });

  it('is the same number, with up to three decimals', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2_000_000 }), (thousandths) => {
        expect(roundTrip(thousandths / 1000)).toEqual([]);
      }),
    );
  });

  it('is never another number: no form is shared by two numbers', () => {
    const owner = new Map<string, number>();
    for (let n = 0; n <= 2000; n += 1)
      for (const form of spokenForms(n)) {
        expect([form, owner.get(form)]).toEqual([form, undefined]);
        owner.set(form, n);
      }
  });

  it('asks back only for pairs like "nineteen fifty", and for a half behind whole hundreds', () => {
    for (let n = 0; n < 1100; n += 1) expect(ambiguousForms(n)).toEqual([]);
    expect(ambiguousForms(1950)).toEqual(['nineteen fifty']);
    expect(ambiguousForms(1905)).toEqual(['nineteen oh five']);
    expect(ambiguousForms(100.5)).toEqual([
      'one hundred and a half',
      'a hundred and a half',
      'one zero zero and a half',
      'one oh oh and a half',
    ]);
    expect(ambiguousForms(120.5)).toEqual([]);
  });

  it('is in the list: the forms of the contract', () => {
    expect(spokenForms(120)).toEqual([
      'one hundred twenty',
      'one hundred and twenty',
      'a hundred twenty',
      'a hundred and twenty',
      'one two zero',
      'one two oh',
      'one twenty',
    ]);
    expect(spokenForms(1.5)).toEqual(['one point five', 'one and a half']);
    expect(spokenForms(0.8)).toEqual(['zero point eight', 'point eight', 'oh point eight']);
    expect(spokenForms(1500)).toContain('fifteen hundred');
    expect(spokenForms(12345)).toEqual([]);
    expect(spokenForms(-1)).toEqual([]);
  });
});
