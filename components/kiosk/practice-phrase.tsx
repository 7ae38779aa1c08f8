'use client';
import type { ReactNode } from 'react';
import { mostTries, toSay, type PracticeState } from '@/lib/practice';
import { Button } from '../design/button';
import { Glyph } from '../design/glyph';
import { tryWords } from './practice-words';

const countOf = ({ at, phrases }: PracticeState): string => {
  if (at.kind === 'phrase') return `${at.index + 1} of ${phrases.length}`;
  return at.kind === 'own' ? `Your own words for “${at.insteadOf}”` : '';
};

/** Heard before in this phrase, without what is shown now. */
const earlier = ({ at, phrases }: PracticeState): number => {
  if (at.kind === 'results') return 0;
  const tries = at.kind === 'own' ? at.tries : (phrases[at.index]?.tries ?? []);
  return tries.length - (at.last === undefined ? 0 : 1);
};

/** One phrase to say, and how it was heard. */
export function PracticePhraseView({
  state,
  hearing,
  onGoOn,
  onSkip,
  onEnd,
}: {
  readonly state: PracticeState;
  /** What the ears do now. */
  readonly hearing: ReactNode;
  readonly onGoOn: () => void;
  readonly onSkip: () => void;
  readonly onEnd: () => void;
}) {
  const { at, phrases } = state;
  const say = toSay(state);
  if (at.kind === 'results' || say === undefined) return null;
  const heard = at.last === undefined ? undefined : tryWords(at.last);
  const again = earlier(state);
  return (
    <div className="flex h-full flex-col gap-5">
      <div className="flex flex-wrap items-center gap-6">
        <p className="text-glance font-bold">{countOf(state)}</p>
        {at.kind === 'phrase' ? (
          <progress
            className="meter h-[1rem] grow"
            max={phrases.length}
            value={at.index}
            aria-label="How far the practice is"
          />
        ) : (
          <span className="grow" />
        )}
        {hearing}
      </div>
      <div className="flex grow flex-col items-start justify-center gap-4">
        <p className="text-read">
          {again === 0 ? 'Say' : `Say it again, ${again + 1} of ${mostTries}`}
        </p>
        <p className="text-figure font-bold text-balance" data-value="main">
          “{say}”
        </p>
        <p role="status" className="flex min-h-[4rem] items-center gap-4 text-read font-bold">
          {heard === undefined ? null : (
            <>
              <Glyph name={heard.glyph} className={heard.tint} />
              <span>{heard.text}</span>
            </>
          )}
        </p>
      </div>
      <div className="flex flex-wrap gap-4">
        {heard === undefined ? (
          <Button glyph="forward" keys="→" onPress={onSkip}>
            {at.kind === 'own' ? 'Not these words' : 'Pass over'}
          </Button>
        ) : (
          <Button kind="main" glyph="forward" keys="→" onPress={onGoOn}>
            Go on
          </Button>
        )}
        {at.kind === 'phrase' ? <Button onPress={onEnd}>Enough, show the results</Button> : null}
      </div>
    </div>
  );
}
