import { isValue, otherWordings, type Practised, type Try, type Works } from '@/lib/practice';
import type { PersonalVoice } from '@/lib/voice';
import type { GlyphName } from '../design/glyph';
import { percent } from '../design/percent';

interface Sign {
  readonly glyph: GlyphName;
  readonly tint: string;
}

/** How one try was heard, in words and a sign. */
export const tryWords = ({ as, heard, confidence }: Try): Sign & { readonly text: string } => {
  switch (as) {
    case 'right':
      return {
        glyph: 'tick',
        tint: 'text-good',
        text: `Heard “${heard}”: right, ${percent(confidence)} sure`,
      };
    case 'unclear':
      return {
        glyph: 'query',
        tint: 'text-unsure',
        text: `Heard “${heard}”: right, but not clear enough to act on, ${percent(confidence)} sure`,
      };
    case 'other':
      return {
        glyph: 'cross',
        tint: 'text-bad',
        text: `Heard “${heard}”: something else, ${percent(confidence)} sure`,
      };
    case 'nothing':
      return { glyph: 'cross', tint: 'text-bad', text: `Heard “${heard}”: no phrase` };
  }
};

export const worksWords: Readonly<Record<Works, Sign & { readonly text: string }>> = {
  works: { glyph: 'tick', tint: 'text-good', text: 'works' },
  sometimes: { glyph: 'query', tint: 'text-unsure', text: 'works at times' },
  readBack: { glyph: 'query', tint: 'text-unsure', text: 'right, but read back each time' },
  fails: { glyph: 'cross', tint: 'text-bad', text: 'does not work' },
  notTried: { glyph: 'forward', tint: 'text-quiet', text: 'not tried' },
};

const quoted = (words: readonly string[]): string =>
  words.map((word) => `“${word}”`).join(words.length > 2 ? ', ' : ' or ');

/** What to say or do in place of a phrase that does not work. */
export const insteadWords = ({ say }: Practised): string => {
  if (isValue(say))
    return 'Say it digit by digit (“one two five”), look at what is shown, or type it.';
  const others = otherWordings(say).slice(0, 3);
  return others.length === 0
    ? 'Use its key, the foot switch or a touch.'
    : `Say ${quoted(others)}, or use its key or a touch.`;
};

/** What a practice changes for whoever is signed on. */
export const changesWords = ({
  leastConfidence,
  leastNumberConfidence,
  readBack,
  own,
}: PersonalVoice): readonly string[] => [
  ...own.map(({ say }) => `You can say “${say}”.`),
  ...(readBack.length === 0
    ? []
    : [`Values with ${readBack.map((word) => `“${word}”`).join(', ')} are always read back.`]),
  ...(leastNumberConfidence > 0
    ? [`Numbers under ${percent(leastNumberConfidence)} sure are read back.`]
    : []),
  ...(leastConfidence > 0
    ? [`Phrases under ${percent(leastConfidence)} sure are asked for again.`]
    : []),
];
