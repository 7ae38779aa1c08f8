'use client';
import { choices, troubled, worksOf, type PracticeState, type Practised } from '@/lib/practice';
import type { PersonalVoice } from '@/lib/voice';
import { Button } from '../design/button';
import { Glyph } from '../design/glyph';
import { changesWords, insteadWords, tryWords, worksWords } from './practice-words';

interface ResultsProps {
  readonly state: PracticeState;
  /** What follows from it for the hearing. */
  readonly voice: PersonalVoice;
  readonly problem: string | undefined;
  readonly busy: boolean;
  readonly onChoose: (insteadOf: string, say: string) => void;
  readonly onDrop: (insteadOf: string) => void;
  readonly onKeep: () => void;
  readonly onAgain: () => void;
}

function OwnWords({
  state,
  phrase,
  onChoose,
  onDrop,
}: Pick<ResultsProps, 'state' | 'onChoose' | 'onDrop'> & { readonly phrase: Practised }) {
  const own = state.own.find(({ insteadOf }) => insteadOf === phrase.say);
  if (own !== undefined)
    return (
      <p className="flex flex-wrap items-center gap-4">
        <Glyph name="tick" className="text-good" />
        <span className="font-bold">You say “{own.say}” for it.</span>
        <Button
          onPress={() => {
            onDrop(phrase.say);
          }}
        >
          Give these words up
        </Button>
      </p>
    );
  const offered = choices(state, phrase);
  return offered.length === 0 ? null : (
    <div className="flex flex-wrap items-center gap-3">
      <span>Or try words of your own:</span>
      {offered.map((say) => (
        <Button
          key={say}
          glyph="speak"
          onPress={() => {
            onChoose(phrase.say, say);
          }}
        >
          “{say}”
        </Button>
      ))}
    </div>
  );
}

function Trouble(
  props: Pick<ResultsProps, 'state' | 'onChoose' | 'onDrop'> & { phrase: Practised },
) {
  const { phrase } = props;
  const works = worksWords[worksOf(phrase)];
  return (
    <li className="flex flex-col gap-2 border-t-2 border-line pt-3">
      <p className="flex flex-wrap items-center gap-x-6 text-glance">
        <span className="font-bold">“{phrase.say}”</span>
        <span className="flex items-center gap-2 font-bold">
          <Glyph name={works.glyph} className={works.tint} />
          {works.text}
        </span>
      </p>
      <p className="text-body text-quiet">
        {phrase.tries.map((one) => tryWords(one).text).join(' · ')}
      </p>
      <p>{insteadWords(phrase)}</p>
      <OwnWords {...props} />
    </li>
  );
}

function Plain({ title, phrases }: { title: string; phrases: readonly Practised[] }) {
  return phrases.length === 0 ? null : (
    <section aria-label={title}>
      <h2 className="text-glance font-bold">{title}</h2>
      <p>{phrases.map(({ say }) => `“${say}”`).join(', ')}</p>
    </section>
  );
}

/** Which phrases work for this voice and which do not, what to say instead, and what is kept of it. */
export function PracticeResults(props: ResultsProps) {
  const { state } = props;
  const trouble = troubled(state);
  const changes = changesWords(props.voice);
  const are = (works: string): readonly Practised[] =>
    state.phrases.filter((phrase) => worksOf(phrase) === works);
  const tried = state.phrases.length - are('notTried').length;
  return (
    <div className="flex flex-col gap-5 pr-3">
      <div className="flex flex-wrap items-center gap-4">
        <p role="status" className="grow text-read font-bold">
          {are('works').length} of {tried} work
        </p>
        <Button
          kind="main"
          glyph="tick"
          disabled={props.busy || tried === 0}
          onPress={props.onKeep}
        >
          Keep this with my name
        </Button>
        <Button glyph="turn" onPress={props.onAgain}>
          From the beginning
        </Button>
      </div>
      <p role="alert" className="text-body font-bold text-bad empty:hidden">
        {props.problem}
      </p>
      {changes.length === 0 ? null : (
        <section aria-label="What changes for you" className="flex flex-col gap-1">
          <h2 className="text-glance font-bold">What changes for you</h2>
          <ul>
            {changes.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </section>
      )}
      {trouble.length === 0 ? null : (
        <ul aria-label="What does not work each time" className="flex flex-col gap-4">
          {trouble.map((phrase) => (
            <Trouble key={phrase.say} {...props} phrase={phrase} />
          ))}
        </ul>
      )}
      <Plain title="Works" phrases={are('works')} />
      <Plain title="Not tried" phrases={are('notTried')} />
    </div>
  );
}
