'use client';
import { useEffect, useState } from 'react';
import type { SetAside } from '@/lib/outbox';
import { Button } from '../design/button';
import { clockText } from '../design/duration';
import type { KioskDisk } from './keep/disk';

/** Saves it as a file, for whoever is to look into it. */
const save = (all: readonly SetAside[]): void => {
  const file = new Blob([JSON.stringify(all, null, 2)], { type: 'application/json' });
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = 'not-stored.json';
  link.click();
  setTimeout(() => {
    URL.revokeObjectURL(link.href);
  }, 60_000);
};

/** What could not be stored and stays on this kiosk. */
export function AsideList({ disk }: { readonly disk: KioskDisk }) {
  const [all, setAll] = useState<readonly SetAside[]>([]);
  const [problem, setProblem] = useState<string>();
  useEffect(() => {
    let wanted = true;
    void disk.readAside().then((read) => {
      if (!wanted) return;
      if (read.ok) setAll(read.value);
      else setProblem(read.error);
    });
    return () => {
      wanted = false;
    };
  }, [disk]);
  if (problem !== undefined) return <p className="text-body font-bold">{problem}</p>;
  if (all.length === 0) return <p className="text-body text-quiet">Nothing was set aside.</p>;
  return (
    <div className="flex flex-col items-start gap-3">
      <ul className="flex flex-col gap-1 text-body">
        {all.map(({ id, name, at, mine }) => (
          <li key={id}>
            {name}: {mine.length} {mine.length === 1 ? 'entry' : 'entries'}, set aside at{' '}
            {clockText(at)}
          </li>
        ))}
      </ul>
      <Button
        glyph="note"
        onPress={() => {
          save(all);
        }}
      >
        Save as a file
      </Button>
    </div>
  );
}
