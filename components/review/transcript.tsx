import { Fragment } from 'react';
import type { Transcript, Why } from '@/lib/review';

type Word = Transcript['words'][number];

/** Words that stand together and are equally sure, as one run. */
export const runsOf = (
  words: readonly Word[],
): readonly { readonly text: string; readonly unsure: boolean }[] => {
  const runs: { text: string; unsure: boolean }[] = [];
  for (const { text, sure } of words) {
    const unsure = sure === false;
    const last = runs.at(-1);
    if (last?.unsure === unsure) last.text += ` ${text}`;
    else runs.push({ text, unsure });
  }
  return runs;
};

/** What was typed or heard. What the hearing was not sure of is underlined, and said to be so. */
export function TranscriptText({ transcript }: { readonly transcript: Transcript }) {
  const { words, spoken, confidence } = transcript;
  const marked = words.some(({ sure }) => sure === false);
  return (
    <>
      <q>
        {runsOf(words).map(({ text, unsure }, at) => (
          <Fragment key={at}>
            {at === 0 ? '' : ' '}
            {unsure ? (
              <>
                <u className="decoration-unsure decoration-wavy decoration-2">{text}</u>{' '}
                <small className="text-quiet">(unsure)</small>
              </>
            ) : (
              text
            )}
          </Fragment>
        ))}
      </q>
      {spoken ? (
        <small className="text-quiet">
          {' '}
          {confidence === undefined || marked
            ? 'spoken'
            : `spoken, least sure word ${Math.round(confidence * 100)} %`}
        </small>
      ) : null}
    </>
  );
}

/** Why, in words and sound. Sounds are for whoever is signed on. */
export function WhyText({ why, sounds }: { readonly why: Why; readonly sounds: boolean }) {
  return (
    <>
      {why.transcript === undefined ? null : <TranscriptText transcript={why.transcript} />}
      {why.clip === undefined ? null : sounds ? (
        <audio
          controls
          preload="none"
          aria-label="The note as it was spoken"
          src={`/api/clips/${why.clip}`}
          className="mt-2 block h-[3rem] max-w-full"
        />
      ) : (
        <small className="block text-quiet">
          The sound was kept: a foreman who is signed on can play it.
        </small>
      )}
    </>
  );
}
