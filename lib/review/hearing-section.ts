import { proportion } from '../statistics';
import type { HearingCounts } from './rows';
import type { HearingSection, PhraseHearings } from './sections';

/** Sums of one phrase. What was taken back was heard before, perhaps in an earlier half hour: never more than heard. */
const phraseHearings = (phrase: string, sums: HearingCounts): PhraseHearings => {
  const trouble = Math.min(sums.heard, sums.declined + sums.takenBack + sums.saidAgain);
  const troubled = proportion(trouble, sums.heard);
  return {
    phrase,
    ...sums,
    troubled: troubled.ok ? troubled.value : { share: 0, from: 0, to: 1 },
  };
};

/** The phrases that fail most surely first. */
export const hearingSection = (
  sums: readonly (HearingCounts & { readonly phrase: string })[],
): HearingSection => ({
  heard: sums.reduce((all, { heard }) => all + heard, 0),
  phrases: sums
    .map(({ phrase, heard, askedBack, declined, takenBack, saidAgain }) =>
      phraseHearings(phrase, { heard, askedBack, declined, takenBack, saidAgain }),
    )
    .sort(
      (a, b) =>
        b.troubled.from - a.troubled.from || b.heard - a.heard || (a.phrase < b.phrase ? -1 : 1),
    ),
});
