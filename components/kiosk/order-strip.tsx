'use client';
import type { FastenerMarkData } from '../step/fastener-mark';
import { markWords } from '../step/fastener-mark';
import { Glyph } from '../design/glyph';

/**
 * The tightening order as a row of targets: ticked is done, raised is now. A touch chooses the fastener that the next
 * value belongs to.
 */
export function OrderStrip({
  noun,
  marks,
  onChoose,
}: {
  readonly noun: string;
  readonly marks: readonly FastenerMarkData[];
  readonly onChoose: (fastener: string) => void;
}) {
  return (
    <ol aria-label="Tightening order" className="flex flex-wrap gap-2">
      {marks.map(({ fastener, label, state }) => (
        <li key={fastener}>
          <button
            type="button"
            aria-label={`${noun} ${label} ${markWords[state]}`}
            aria-current={state === 'current' ? 'step' : undefined}
            onClick={() => {
              onChoose(fastener);
            }}
            className={`relative flex min-h-glove min-w-glove items-center justify-center gap-1 rounded-block border-2 text-glance font-bold ${
              state === 'current'
                ? 'border-act bg-act text-act-ink'
                : state === 'done'
                  ? 'border-good bg-surface text-good'
                  : state === 'bad'
                    ? 'border-bad bg-surface text-bad'
                    : 'border-edge border-dashed bg-surface text-ink'
            }`}
          >
            {label}
            {state === 'done' ? <Glyph name="tick" className="size-[0.7em]" /> : null}
            {state === 'bad' ? <Glyph name="cross" className="size-[0.7em]" /> : null}
          </button>
        </li>
      ))}
    </ol>
  );
}
