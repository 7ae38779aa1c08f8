import type { Outcome } from '@/lib/kiosk';
import { spokenFigure } from '@/lib/kiosk';
import { Glyph, type GlyphName } from '../design/glyph';
import { VerdictMark } from '../step/verdict-mark';

const tones: Readonly<Record<Outcome['tone'], { glyph: GlyphName; tint: string }>> = {
  good: { glyph: 'tick', tint: 'text-good' },
  bad: { glyph: 'cross', tint: 'text-bad' },
  ask: { glyph: 'query', tint: 'text-unsure' },
  plain: { glyph: 'forward', tint: 'text-quiet' },
};

type JudgedFigure = NonNullable<Outcome['figure']>;

function Judged({ figure, asks }: { readonly figure: JudgedFigure; readonly asks: boolean }) {
  return (
    <>
      <span className="text-glance">{figure.label}</span>
      <span className="text-read font-bold whitespace-nowrap" data-value="heard">
        {spokenFigure(figure.value, figure.unit)}
      </span>
      <VerdictMark verdict={figure.verdict} className="text-read" />
      {asks ? <span className="text-glance font-bold text-unsure">not taken yet</span> : null}
    </>
  );
}

/**
 * What was last heard (or pressed) and what became of it. It never goes away by itself: whoever looks up from the
 * vehicle a minute later still sees it. Read out politely by readers of text.
 */
export function HeardStrip({
  outcome,
  forming,
}: {
  readonly outcome: Outcome | undefined;
  /** A number being heard that may still go on: shown at once, so that nobody says it twice. */
  readonly forming: string | undefined;
}) {
  return (
    <section
      aria-label="Last heard"
      className="flex min-h-[5.4rem] items-center rounded-block border-2 border-line bg-surface px-5 py-1"
    >
      <p role="status" className="flex grow flex-wrap items-baseline gap-x-7">
        {forming !== undefined ? (
          <>
            <span className="text-glance text-quiet">Hearing</span>
            <span className="text-read font-bold">{forming} …</span>
          </>
        ) : outcome === undefined ? (
          <span className="text-glance text-quiet">Nothing heard yet</span>
        ) : (
          <>
            {outcome.said === undefined ? null : (
              <span className="max-w-[44rem] truncate text-glance text-quiet">
                Heard “{outcome.said}”
              </span>
            )}
            {outcome.figure === undefined ? (
              <span className="flex min-w-0 items-baseline gap-3 text-glance font-bold">
                <Glyph
                  name={tones[outcome.tone].glyph}
                  className={`self-center ${tones[outcome.tone].tint}`}
                />
                <span>{outcome.text}</span>
              </span>
            ) : (
              <Judged figure={outcome.figure} asks={outcome.tone === 'ask'} />
            )}
          </>
        )}
      </p>
    </section>
  );
}
