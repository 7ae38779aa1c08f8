import type { ReactNode } from 'react';
import { KeyHint } from './key-hint';
import { Glyph, type GlyphName } from './glyph';

const kinds = {
  /** What most likely comes next; one on a screen. */
  main: 'bg-act text-act-ink border-act text-glance font-bold',
  plain: 'bg-surface text-ink border-edge',
  quiet: 'bg-transparent text-ink border-transparent',
  chosen: 'bg-sunk text-ink border-ink font-bold',
} as const;

export interface ButtonProps {
  readonly children: ReactNode;
  readonly onPress: () => void;
  readonly kind?: keyof typeof kinds;
  readonly glyph?: GlyphName;
  /** The key that does the same, as printed. */
  readonly keys?: string | undefined;
  readonly disabled?: boolean;
  readonly wide?: boolean;
  readonly className?: string;
  readonly pressed?: boolean;
  readonly describedBy?: string;
}

/** A target for a gloved finger: at least 20 mm each way on the bay screen. */
export function Button({
  children,
  onPress,
  kind = 'plain',
  glyph,
  keys,
  disabled = false,
  wide = false,
  className = '',
  pressed,
  describedBy,
}: ButtonProps) {
  return (
    <button
      type="button"
      onClick={onPress}
      disabled={disabled}
      aria-pressed={pressed}
      aria-describedby={describedBy}
      aria-keyshortcuts={keys}
      className={`inline-flex min-h-glove min-w-glove items-center justify-center gap-[0.5em] rounded-block border-2 px-5 py-2 text-center disabled:border-line disabled:bg-sunk disabled:text-quiet ${kinds[kind]} ${wide ? 'w-full' : ''} ${className}`}
    >
      {glyph === undefined ? null : <Glyph name={glyph} />}
      <span>{children}</span>
      {keys === undefined ? null : <KeyHint keys={keys} />}
    </button>
  );
}
