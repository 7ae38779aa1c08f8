import { expect, test } from 'vitest';
import { phraseOf } from '@/lib/review';
import { phraseTable, spokenForms } from '@/lib/voice';

test.each([
  ['next', 'next'],
  ['step done', 'step done'],
  ['torqued one twenty newton meters', 'torqued {value}'],
  ['one hundred and twenty', '{value}'],
  ['three point nine', '{value}'],
  ['bolt three torqued ten', '{fastener} torqued {value}'],
  ['nut two at ninety', '{fastener} at {value}'],
  ['go to step four', 'go to step {step}'],
  ['open step twelve again', 'open step {step} again'],
  ['measured two point five millimeters', 'measured {value}'],
])('“%s” is the phrase “%s”', (said, phrase) => {
  expect(phraseOf(said)).toBe(phrase);
});

test.each(['', 'hammer', 'torqued', 'torqued hammer', 'the radio is on', 'bolt three'])(
  '“%s” is no phrase',
  (said) => {
    expect(phraseOf(said)).toBe('');
  },
);

test('every phrase of the table is itself, whatever stands in its slots', () => {
  for (const { say } of phraseTable)
    for (const phrase of say) {
      const said = phrase
        .replace('{value}', spokenForms(17)[0] ?? '')
        .replace('{fastener}', 'bolt seven')
        .replace('{step}', 'nine');
      expect([said, phraseOf(said)]).toEqual([said, phrase]);
    }
});
