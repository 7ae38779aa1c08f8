'use client';
import type { Question } from '@/lib/kiosk';
import { spokenFigure } from '@/lib/kiosk';
import { formatWindow, unitFacts } from '@/lib/quantity';
import { Button } from '../design/button';
import { VerdictMark } from '../step/verdict-mark';
import { keyOf } from './key-of';
import { ReasonForm } from './reason-form';

type Draft = Extract<Question, { kind: 'value' }>['draft'];
type Oddity = Extract<Question, { kind: 'value' }>['oddities'][number];

/** Why it is asked back, one line each. */
const oddityLine = (oddity: Oddity, draft: Draft): string => {
  switch (oddity.kind) {
    case 'unsure':
      return `Not heard well: ${oddity.why}`;
    case 'implausible':
      return 'Far from the target: a slip of the tongue, or of the ear?';
    case 'outOfSpec':
      return `Outside what is accepted: ${formatWindow(draft.interval, draft.unit)}`;
    case 'otherUnit':
      return `Given in ${unitFacts[draft.unit].symbol}, not in the sheet’s unit`;
    case 'outOfOrder':
      return `${oddity.next} comes first in the order`;
    case 'contradicts':
      return `${oddity.earlier} was given before`;
  }
};

function YesNo({ onYes, onNo, yes }: { onYes?: () => void; onNo: () => void; yes: string }) {
  const look = 'min-h-[9rem] grow basis-0 text-read font-bold';
  return (
    <div className="flex gap-6">
      <Button glyph="cross" keys={keyOf('no')} onPress={onNo} className={look}>
        No
      </Button>
      {onYes === undefined ? null : (
        <Button kind="main" glyph="tick" keys={keyOf('yes')} onPress={onYes} className={look}>
          {yes}
        </Button>
      )}
    </div>
  );
}

/** What the kiosk asks back. Nothing is stored until it is answered. */
export function QuestionPanel({
  question,
  dictating,
  soundDays,
  onYes,
  onNo,
  onReason,
  onDictate,
}: {
  readonly question: Question;
  /** The ears are taking a reason down. */
  readonly dictating: boolean;
  /** So long the sound of a spoken reason is kept; 0: it is not. */
  readonly soundDays: number;
  readonly onYes: () => void;
  readonly onNo: () => void;
  readonly onReason: (text: string) => void;
  readonly onDictate: (() => void) | undefined;
}) {
  if (question.kind === 'reason')
    return (
      <ReasonForm
        key={question.text}
        question={question}
        dictating={dictating}
        soundDays={soundDays}
        onReason={onReason}
        onCancel={onNo}
        onDictate={onDictate}
      />
    );
  return (
    <section
      aria-labelledby="question"
      className="flex h-full flex-col justify-between gap-5 rounded-block border-4 border-unsure bg-surface p-8"
    >
      {question.kind === 'value' ? (
        <div className="flex flex-col gap-2">
          <h2 id="question" className="text-read font-bold">
            {question.draft.label}: is this right?
          </h2>
          <p className="text-shout font-bold" data-value="asked">
            {spokenFigure(question.draft.value, question.draft.unit)}
          </p>
          <VerdictMark verdict={question.draft.verdict} className="text-read" />
          <p className="text-glance">{question.draft.sentence}</p>
          <ul className="text-glance">
            {question.oddities.map((oddity) => (
              <li key={oddity.kind}>{oddityLine(oddity, question.draft)}</li>
            ))}
          </ul>
        </div>
      ) : question.kind === 'whichValue' ? (
        <div className="flex flex-col gap-4">
          <h2 id="question" className="text-read font-bold">
            Which one was it?
          </h2>
          <p
            className="flex flex-wrap items-baseline gap-x-10 text-shout font-bold"
            data-value="asked"
          >
            {question.candidates.map((candidate, index) => (
              <span key={candidate}>
                {index === 0 ? null : <span className="mr-10 text-read font-normal">or</span>}
                {candidate}
              </span>
            ))}
          </p>
          <p className="text-read">Say it again, digit by digit</p>
        </div>
      ) : (
        <h2 id="question" className="text-[5rem] leading-[1.15] font-bold" data-value="asked">
          {question.text}
        </h2>
      )}
      {question.kind === 'whichValue' ? (
        <YesNo onNo={onNo} yes="" />
      ) : (
        <YesNo onYes={onYes} onNo={onNo} yes={question.kind === 'value' ? 'Yes, take it' : 'Yes'} />
      )}
    </section>
  );
}
