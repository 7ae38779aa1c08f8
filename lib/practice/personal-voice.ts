import { numberWords, type PersonalVoice } from '../voice';
import { isValue } from './own-phrase';
import { ownPhrases, type PracticeRecord, type Practised } from './record';

/** Raised no further: above it phrases of this voice would rarely act; the phrase itself is then named as failing. */
const mostConfidence = 0.9;
const above = 0.01;

/** Just above the surest mistake; 0 where none was made. */
const overMistakes = (phrases: readonly Practised[], most: number): number => {
  const wrong = phrases
    .flatMap(({ tries }) => tries)
    .filter(({ as }) => as === 'other')
    .map(({ confidence }) => Math.min(most, confidence + above));
  return Math.max(0, ...wrong);
};

/** Number words that were said and not heard, and those that were heard in their place. */
const mistakenWords = ({ say, tries }: Practised): readonly string[] =>
  tries
    .filter(({ as }) => as === 'other')
    .flatMap(({ heard }) => {
      const said = say.split(' ');
      const got = heard.split(' ');
      return [
        ...said.filter((word) => !got.includes(word)),
        ...got.filter((word) => !said.includes(word)),
      ];
    })
    .filter((word) => numberWords.includes(word));

/**
 * What follows from a practice for the hearing. The rule: a level is only raised, to just above the surest mistake that
 * was made, and number words that were mistaken are read back whatever the confidence. Nothing that was heard well
 * lowers anything, so no value passes that the shop's own levels would stop.
 */
export const personalVoice = ({ phrases, own }: PracticeRecord): PersonalVoice => {
  const numbers = phrases.filter(({ say }) => isValue(say));
  return {
    own: ownPhrases(own) ?? [],
    leastConfidence: overMistakes(
      phrases.filter(({ say }) => !isValue(say)),
      mostConfidence,
    ),
    leastNumberConfidence: overMistakes(numbers, 1),
    readBack: [...new Set(numbers.flatMap(mistakenWords))].sort(),
  };
};
