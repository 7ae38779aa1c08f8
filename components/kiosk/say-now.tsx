import { Glyph } from '../design/glyph';

/** A few things that can be said now; the whole list is one touch away. */
export function SayNow({ phrases, onAll }: { phrases: readonly string[]; onAll: () => void }) {
  return (
    <section aria-label="What can be said now" className="flex min-w-0 grow items-center gap-4">
      <Glyph name="speak" className="text-act" />
      <ul className="flex h-[1.3em] min-w-0 grow flex-wrap gap-x-7 overflow-hidden text-glance">
        {phrases.map((phrase) => (
          <li key={phrase} className="whitespace-nowrap">
            “{phrase}”
          </li>
        ))}
      </ul>
      <button
        type="button"
        onClick={onAll}
        aria-keyshortcuts="?"
        className="min-h-glove shrink-0 rounded-block border-2 border-edge bg-surface px-4"
      >
        All phrases and keys
      </button>
    </section>
  );
}
