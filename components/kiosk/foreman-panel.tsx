'use client';
import { useState } from 'react';
import type { JobState } from '@/lib/job';
import { looseEnds, type LooseEnd } from '@/lib/ledger';
import type { Person } from '@/lib/people';
import { Button } from '../design/button';
import { Panel } from '../design/panel';
import { TextEntry } from '../design/text-entry';
import { barredFrom, wordsFor, type Decision, type Word } from './foreman-acts';
import { PersonChoice } from './person-choice';
import { PinEntry } from './pin-entry';

const wordLabels: Readonly<Record<Word, string>> = {
  sign: 'Sign for it',
  accepted: 'Accept',
  acceptedRecheckDue: 'Accept, re-check due',
  rework: 'Do it again',
};

function EndChoice({
  end,
  chosen,
  onChoose,
}: {
  end: LooseEnd;
  chosen: Word | undefined;
  onChoose: (word: Word) => void;
}) {
  return (
    <li className="flex flex-wrap items-center gap-3 border-b border-line py-2">
      <p className="min-w-[20rem] grow basis-0 text-glance">
        {end.text}
        {end.detail === undefined ? null : (
          <span className="block text-body text-quiet">{end.detail}</span>
        )}
      </p>
      {wordsFor(end).map((word) => (
        <Button
          key={word}
          kind={chosen === word ? 'chosen' : 'plain'}
          pressed={chosen === word}
          onPress={() => {
            onChoose(word);
          }}
        >
          {wordLabels[word]}
        </Button>
      ))}
    </li>
  );
}

/**
 * A second person answers for what is left: who, what, why, and a PIN for just these words. Nobody who worked on the
 * job may; the core refuses it too.
 */
export function ForemanPanel({
  job,
  people,
  problem,
  busy,
  onDecide,
  onClose,
}: {
  readonly job: JobState;
  readonly people: readonly Person[];
  readonly problem: string | undefined;
  readonly busy: boolean;
  readonly onDecide: (
    foreman: Person,
    pin: string,
    decisions: readonly Decision[],
    reason: string,
  ) => void;
  readonly onClose: () => void;
}) {
  const [foreman, setForeman] = useState<Person>();
  const [words, setWords] = useState<Readonly<Record<string, Word>>>({});
  const [reason, setReason] = useState('');
  const open = looseEnds(job).filter(({ signedBy }) => signedBy === undefined);
  const decisions = open.flatMap((end): Decision[] => {
    const word = words[end.key];
    return word === undefined ? [] : [{ end, word }];
  });
  if (foreman === undefined)
    return (
      <Panel title="Which foreman?" onClose={onClose} lead="Nobody signs for their own work.">
        <PersonChoice
          people={people.filter(({ role }) => role === 'foreman')}
          barred={(person) => barredFrom(job, person)}
          onPerson={setForeman}
        />
      </Panel>
    );
  return (
    <Panel title={`${foreman.name} decides`} onClose={onClose}>
      <div className="flex flex-col gap-6 pr-3">
        <ul aria-label="Loose ends">
          {open.map((end) => (
            <EndChoice
              key={end.key}
              end={end}
              chosen={words[end.key]}
              onChoose={(word) => {
                const { [end.key]: before, ...rest } = words;
                setWords(before === word ? rest : { ...words, [end.key]: word });
              }}
            />
          ))}
        </ul>
        <TextEntry label="Why it is right so" value={reason} onChange={setReason} lines={2} />
        {decisions.length > 0 && reason.trim() !== '' ? (
          <PinEntry
            name={foreman.name}
            problem={problem}
            busy={busy}
            act={`Sign ${decisions.length}`}
            onPin={(pin) => {
              onDecide(foreman, pin, decisions, reason.trim());
            }}
            onCancel={() => {
              setForeman(undefined);
            }}
          />
        ) : (
          <p className="text-body text-quiet">
            Choose what to answer for and say why; then the PIN is asked.
          </p>
        )}
      </div>
    </Panel>
  );
}
