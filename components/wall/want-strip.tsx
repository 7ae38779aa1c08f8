import { ageWords, wantWords, whoNeedsSomebody, type BayCard } from '@/lib/wall';
import { Glyph, type GlyphName } from '../design/glyph';
import { answeredNow, wantSigns } from './signs';

/** So many have room; the rest is counted, and marked on its own tiles. */
const places = 4;

interface Entry {
  readonly key: string;
  readonly name: string;
  readonly sign: GlyphName;
  readonly words: string;
  readonly since: string | undefined;
  readonly calm: boolean;
}

const entriesOf = (
  cards: readonly BayCard[],
  names: Readonly<Record<string, string>>,
  nowMs: number,
): readonly Entry[] => {
  const wanting = whoNeedsSomebody(cards).map(({ card, want }): Entry => ({
    key: card.bay.id,
    name: names[card.bay.id] ?? card.bay.name,
    sign: wantSigns[want.kind],
    words: wantWords(want),
    since: want.since,
    calm: false,
  }));
  const answered = cards.flatMap((card): Entry[] => {
    const by = card.wants.length === 0 ? answeredNow(card, nowMs) : undefined;
    if (by === undefined) return [];
    const name = names[card.bay.id] ?? card.bay.name;
    return [{ key: card.bay.id, name, sign: 'tick', words: by, since: undefined, calm: true }];
  });
  return [...wanting, ...answered];
};

/** What needs a person now, in order, in letters that are read from afar. */
export function WantStrip({
  cards,
  names,
  nowMs,
}: {
  readonly cards: readonly BayCard[];
  readonly names: Readonly<Record<string, string>>;
  readonly nowMs: number;
}) {
  const entries = entriesOf(cards, names, nowMs);
  const shown = entries.length > places ? entries.slice(0, places - 1) : entries;
  const rest = entries.length - shown.length;
  return (
    <section aria-label="Needs somebody now" aria-live="polite" className="min-h-[6rem] shrink-0">
      {entries.length === 0 ? (
        <p data-far className="text-far text-quiet">
          Nobody is needed
        </p>
      ) : (
        <ol className="grid grid-cols-2 gap-x-4 gap-y-1">
          {shown.map(({ key, name, sign, words, since, calm }) => (
            <li key={key} className="flex min-w-0 items-center gap-3" data-want={key}>
              <span
                data-far
                className={`flex shrink-0 items-center gap-2 rounded-block border-4 border-ink px-2 text-far font-bold ${calm ? 'bg-surface text-ink' : 'bg-ink text-ground'}`}
              >
                <Glyph name={sign} className="text-[0.7em]" />
                {name}
              </span>
              <span data-far className="min-w-0 truncate text-far">
                {words}
              </span>
              {since === undefined ? null : (
                <span className="ml-auto shrink-0 text-glance font-bold">
                  {ageWords(nowMs - Date.parse(since))}
                </span>
              )}
            </li>
          ))}
          {rest === 0 ? null : (
            <li data-far className="text-far">
              and {rest} more bays
            </li>
          )}
        </ol>
      )}
    </section>
  );
}
