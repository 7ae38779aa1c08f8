'use client';
import { Glyph } from '../design/glyph';
import { useKioskVoice } from './kiosk-voice';
import { inOwnWords } from './own-words';

/** Words to say as they stand; in brackets what is said in the mechanic's own. */
const quoted = (phrase: string): string =>
  phrase.startsWith('(') ? phrase.slice(1, -1) : `“${phrase}”`;

/** A few things that can be said now; the whole list is one touch away. */
export function SayNow({ phrases }: { phrases: readonly string[] }) {
  const { voice, bay } = useKioskVoice();
  return (
    <section aria-label="What can be said now" className="flex min-w-0 grow items-center gap-4">
      <Glyph name="speak" className="text-act" />
      <ul className="flex h-[1.3em] min-w-0 grow flex-wrap gap-x-7 overflow-hidden text-glance">
        {bay?.callWord === undefined ? null : (
          <li className="font-bold whitespace-nowrap">begin with “{bay.callWord}”</li>
        )}
        {phrases.map((phrase) => (
          <li key={phrase} className="whitespace-nowrap">
            {quoted(inOwnWords(phrase, voice))}
          </li>
        ))}
      </ul>
    </section>
  );
}
