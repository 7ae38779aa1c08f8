import { ageWords, wantWords, whoNeedsSomebody, type BayCard } from '@/lib/wall';
import { Glyph } from '../design/glyph';
import { wantSigns } from '../wall/signs';

interface RowProps {
  readonly card: BayCard;
  readonly nowMs: number;
  readonly onOpen: (bay: string) => void;
}

function Row({ card, nowMs, onOpen }: RowProps) {
  const { job } = card;
  const [want] = card.wants;
  return (
    <li className="min-w-0">
      <button
        type="button"
        onClick={() => {
          onOpen(card.bay.id);
        }}
        disabled={job === undefined}
        className={`flex min-h-glove w-full items-center gap-4 rounded-block border-2 px-4 py-2 text-left ${want === undefined ? 'border-edge bg-surface disabled:border-line disabled:bg-ground disabled:text-quiet' : 'border-ink bg-ink text-ground'}`}
      >
        {want === undefined ? null : <Glyph name={wantSigns[want.kind]} className="text-glance" />}
        <span className="min-w-0 grow">
          <span className="block font-bold">
            {card.bay.name}
            {job === undefined ? '' : ` · ${job.plate}`}
          </span>
          <span className="block truncate">
            {want !== undefined
              ? `${wantWords(want)} · ${ageWords(nowMs - Date.parse(want.since))}`
              : job === undefined
                ? 'No job open'
                : job.phase === 'held'
                  ? `On hold: ${job.hold?.reason.text ?? ''}`
                  : `Step ${job.step.number} of ${job.step.of}, ${job.procedure}`}
          </span>
        </span>
        {job === undefined ? null : <Glyph name="forward" />}
      </button>
    </li>
  );
}

const exports = ['readings', 'deviations', 'events'] as const;

/** Everything that was recorded, for a spreadsheet. */
function Exports() {
  return (
    <nav aria-label="Take out as CSV" className="flex flex-wrap items-center gap-3">
      <span>Take out as CSV</span>
      {exports.map((kind) => (
        <a
          key={kind}
          href={`/api/export/${kind}`}
          download
          className="flex min-h-glove items-center rounded-block border-2 border-edge bg-surface px-4"
        >
          {kind}
        </a>
      ))}
    </nav>
  );
}

/** Every bay: those that need somebody first, in the order of the wall. */
export function Board({
  cards,
  nowMs,
  onOpen,
}: {
  readonly cards: readonly BayCard[];
  readonly nowMs: number;
  readonly onOpen: (bay: string) => void;
}) {
  const wanting = whoNeedsSomebody(cards).map(({ card }) => card);
  const calm = cards.filter((card) => !wanting.includes(card));
  const list = (name: string, rows: readonly BayCard[]) =>
    rows.length === 0 ? null : (
      <section aria-label={name} className="flex flex-col gap-2">
        <h2 className="text-glance font-bold">{name}</h2>
        <ul className="grid gap-2 wide:grid-cols-2">
          {rows.map((card) => (
            <Row key={card.bay.id} card={card} nowMs={nowMs} onOpen={onOpen} />
          ))}
        </ul>
      </section>
    );
  return (
    <>
      {wanting.length === 0 && cards.length > 0 ? (
        <p className="text-glance">Nobody is needed.</p>
      ) : (
        list('Needs somebody', wanting)
      )}
      {list('Goes on', calm)}
      <Exports />
    </>
  );
}
