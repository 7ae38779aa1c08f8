'use client';
import type { Person } from '@/lib/people';
import { Button } from '../design/button';

const roleWords: Readonly<Record<Person['role'], string>> = {
  mechanic: 'mechanic',
  foreman: 'foreman',
  writer: 'writes procedures',
  admin: 'looks after the system',
};

/** Who it is. A person who may not is shown, with why. */
export function PersonChoice({
  people,
  onPerson,
  barred,
}: {
  readonly people: readonly Person[];
  readonly onPerson: (person: Person) => void;
  readonly barred?: (person: Person) => string | undefined;
}) {
  return (
    <ul className="grid gap-4 wide:grid-cols-3">
      {people.map((person) => {
        const why = barred?.(person);
        return (
          <li key={person.id}>
            <Button
              wide
              disabled={why !== undefined}
              className="min-h-[8rem]"
              onPress={() => {
                onPerson(person);
              }}
            >
              <span className="block text-glance font-bold">{person.name}</span>
              <span className="text-body text-quiet">{why ?? roleWords[person.role]}</span>
            </Button>
          </li>
        );
      })}
    </ul>
  );
}
