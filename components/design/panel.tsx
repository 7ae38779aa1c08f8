'use client';
import { useEffect, useId, useRef, type ReactNode } from 'react';
import { Button } from './button';

/**
 * What lies over the step while something else is looked at. It takes the step's place and the keyboard's focus,
 * so that nothing is ever half covered.
 */
export function Panel({
  title,
  children,
  onClose,
  actions,
  lead,
  whole = false,
}: {
  readonly title: string;
  readonly children: ReactNode;
  readonly onClose?: (() => void) | undefined;
  readonly actions?: ReactNode;
  readonly lead?: ReactNode;
  /** It is the whole page: its title is the page's. */
  readonly whole?: boolean;
}) {
  const id = useId();
  const Heading = whole ? 'h1' : 'h2';
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    heading.current?.focus({ preventScroll: true });
  }, [title]);
  return (
    <section
      aria-labelledby={id}
      className="flex h-full min-h-0 flex-col gap-4 rounded-block border-2 border-line bg-surface p-6"
    >
      <header className="flex flex-wrap items-center justify-between gap-4">
        <Heading
          id={id}
          ref={heading}
          tabIndex={-1}
          className="text-read font-bold focus-visible:outline-none"
        >
          {title}
        </Heading>
        <div className="flex flex-wrap gap-3">
          {actions}
          {onClose === undefined ? null : (
            <Button onPress={onClose} glyph="back" keys="Esc">
              Back to the step
            </Button>
          )}
        </div>
      </header>
      {lead === undefined ? null : <p className="text-body text-quiet">{lead}</p>}
      <div className="min-h-0 grow overflow-y-auto" tabIndex={0} role="group" aria-labelledby={id}>
        {children}
      </div>
    </section>
  );
}
