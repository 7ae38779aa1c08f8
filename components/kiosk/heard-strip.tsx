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

/**
 * What was last heard (or pressed) and what became of it. It never goes away by itself: whoever looks up from the
 * vehicle a minute later still sees it. Read out politely by readers of text.
 */
export function HeardStrip({ outcome }: { outcome: Outcome | undefined }) {
  const figure = outcome?.figure;
  return (
    <section
      aria-label="Last heard"
      className="rounded-block border-2 border-line bg-surface px-5 py-3"
    >
      <div role="status" className="flex min-h-[6.5rem] flex-col justify-center gap-1">
        {outcome === undefined ? (
          <p className="text-glance text-quiet">Nothing heard yet</p>
        ) : (
          <>
            {outcome.said === undefined ? null : (
              <p className="truncate text-body text-quiet">
                Heard <q className="text-ink">{outcome.said}</q>
              </p>
            )}
            {figure === undefined ? (
              <p className="flex items-start gap-3 text-glance font-bold">
                <Glyph
                  name={tones[outcome.tone].glyph}
                  className={`mt-[0.05em] ${tones[outcome.tone].tint}`}
                />
                <span>{outcome.text}</span>
              </p>
            ) : (
              <p
                className="flex flex-wrap items-baseline gap-x-6 text-read font-bold"
                data-value="heard"
              >
                <span className="text-glance font-normal">{figure.label}</span>
                <span className="whitespace-nowrap">{spokenFigure(figure.value, figure.unit)}</span>
                <VerdictMark verdict={figure.verdict} />
                {outcome.tone === 'ask' ? (
                  <span className="text-glance text-unsure">not taken yet</span>
                ) : null}
              </p>
            )}
          </>
        )}
      </div>
    </section>
  );
}
