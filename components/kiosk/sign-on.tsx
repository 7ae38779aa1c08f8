'use client';
import { useState } from 'react';
import type { Person } from '@/lib/people';
import { Panel } from '../design/panel';
import { PersonChoice } from './person-choice';
import { PinEntry } from './pin-entry';

/** Who works here now: a name, then a PIN. */
export function SignOn({
  bay,
  people,
  problem,
  busy,
  hint,
  onSignOn,
}: {
  readonly bay: string;
  readonly people: readonly Person[];
  readonly problem: string | undefined;
  readonly busy: boolean;
  /** Only where the shop is the demo. */
  readonly hint: string | undefined;
  readonly onSignOn: (person: Person, pin: string) => void;
}) {
  const [person, setPerson] = useState<Person>();
  return (
    <Panel whole title={person === undefined ? `${bay}: who are you?` : 'Your PIN'} lead={hint}>
      {person === undefined ? (
        <PersonChoice people={people} onPerson={setPerson} />
      ) : (
        <PinEntry
          key={person.id}
          name={person.name}
          problem={problem}
          busy={busy}
          onPin={(pin) => {
            onSignOn(person, pin);
          }}
          onCancel={() => {
            setPerson(undefined);
          }}
        />
      )}
    </Panel>
  );
}
