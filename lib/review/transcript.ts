import type { Words } from './rows';
import type { Transcript, Why } from './sections';

/** Words as they were stored, those marked of which the recogniser was not sure. */
export const transcriptOf = ({
  text,
  spoken,
  confidence,
  unsure,
}: Words): Transcript | undefined =>
  text === undefined
    ? undefined
    : {
        words: text
          .split(/\s+/)
          .filter((word) => word !== '')
          .map((word, at) => ({
            text: word,
            ...(unsure === undefined ? {} : { sure: !unsure.includes(at) }),
          })),
        spoken,
        ...(confidence === undefined ? {} : { confidence }),
      };

export const whyOf = (words: Words): Why => {
  const transcript = transcriptOf(words);
  return {
    ...(transcript === undefined ? {} : { transcript }),
    ...(words.clip === undefined ? {} : { clip: words.clip }),
  };
};
