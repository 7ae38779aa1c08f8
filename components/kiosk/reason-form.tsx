'use client';
import { useState } from 'react';
import type { Question } from '@/lib/kiosk';
import { Button } from '../design/button';
import { Panel } from '../design/panel';
import { TextEntry } from '../design/text-entry';
import { keyText } from './key-of';

type ReasonQuestion = Extract<Question, { kind: 'reason' }>;

/** Common answers, one touch each; anything else is spoken or typed. */
const usual: Readonly<Record<ReasonQuestion['reasonFor']['kind'], readonly string[]>> = {
  hold: [
    'Waiting for parts',
    'Waiting for a tool',
    'Waiting for the foreman',
    'Waiting for approval',
    'Break',
  ],
  leaveOut: ['Not fitted to this vehicle', 'Customer did not want it', 'Done on an earlier job'],
  reopen: ['Leaks', 'Wrong part fitted', 'Fitted the wrong way round', 'Reading to be taken again'],
  reuse: ['No new one to be had', 'In good condition, within the sheet’s limits'],
  deviation: ['Part damaged', 'Part missing from the kit', 'Other tool used', 'Thread repaired'],
  leftOver: ['Old one was in good condition', 'Kit holds more than is needed'],
};

/** Whoever speaks is told what becomes of it. */
const soundWords = (days: number): string =>
  days === 0
    ? 'Only the words are kept.'
    : `It is recorded: the sound is kept with it for ${days === 1 ? 'a day' : `${days} days`}.`;

/** Why: spoken while the panel is open, typed, or one of the usual answers. */
export function ReasonForm({
  question,
  dictating,
  soundDays,
  onReason,
  onCancel,
  onDictate,
}: {
  readonly question: ReasonQuestion;
  readonly dictating: boolean;
  /** So long the sound of what is said is kept; 0: it is not. */
  readonly soundDays: number;
  readonly onReason: (text: string) => void;
  readonly onCancel: () => void;
  readonly onDictate: (() => void) | undefined;
}) {
  const [text, setText] = useState('');
  const keep = (): void => {
    if (text.trim() !== '') onReason(text.trim());
  };
  return (
    <Panel
      title={question.text}
      actions={
        <Button glyph="cross" keys={keyText('Escape')} onPress={onCancel}>
          Leave it
        </Button>
      }
    >
      <div className="flex flex-col gap-5">
        {!dictating ? (
          onDictate === undefined ? null : (
            <div>
              <Button glyph="ear" onPress={onDictate}>
                Say it
              </Button>
            </div>
          )
        ) : (
          <p role="status" className="rounded-block bg-sunk px-5 py-3 text-glance">
            Listening: say why. {soundWords(soundDays)}
          </p>
        )}
        <div role="group" aria-label="Usual answers" className="flex flex-wrap gap-3">
          {usual[question.reasonFor.kind].map((answer) => (
            <Button
              key={answer}
              onPress={() => {
                onReason(answer);
              }}
            >
              {answer}
            </Button>
          ))}
        </div>
        <TextEntry label="In your own words" value={text} onChange={setText} lines={2} />
        <div>
          <Button kind="main" glyph="tick" onPress={keep} disabled={text.trim() === ''}>
            Keep this reason
          </Button>
        </div>
      </div>
    </Panel>
  );
}
