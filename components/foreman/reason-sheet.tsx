'use client';
import { useEffect, useRef, useState } from 'react';
import { Button } from '../design/button';
import type { ForemanAct } from './acts';

/** Why: one of the usual answers, or the foreman's own words. Nothing is done before one is given. */
export function ReasonSheet({
  act,
  busy,
  onReason,
  onCancel,
}: {
  readonly act: ForemanAct;
  readonly busy: boolean;
  readonly onReason: (text: string) => void;
  readonly onCancel: () => void;
}) {
  const [text, setText] = useState('');
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    heading.current?.focus();
    heading.current?.scrollIntoView({ block: 'start' });
  }, []);
  return (
    <section
      aria-labelledby="why"
      className="flex flex-col gap-4 rounded-block border-4 border-ink bg-surface p-4"
    >
      <h2 id="why" ref={heading} tabIndex={-1} className="text-glance font-bold">
        {act.title}
      </h2>
      <div role="group" aria-label="Usual reasons" className="flex flex-wrap gap-3">
        {act.usual.map((one) => (
          <Button
            key={one}
            pressed={text === one}
            kind={text === one ? 'chosen' : 'plain'}
            onPress={() => {
              setText(one);
            }}
          >
            {one}
          </Button>
        ))}
      </div>
      <label className="flex flex-col gap-1">
        <span>In your own words</span>
        <textarea
          value={text}
          rows={2}
          maxLength={2000}
          onChange={(change) => {
            setText(change.target.value);
          }}
          className="rounded-block border-2 border-edge bg-ground p-3"
        />
      </label>
      <div className="flex flex-wrap gap-3">
        <Button
          kind="main"
          glyph="tick"
          disabled={busy || text.trim() === ''}
          onPress={() => {
            onReason(text.trim());
          }}
        >
          {act.label}
        </Button>
        <Button onPress={onCancel}>Leave it</Button>
      </div>
    </section>
  );
}
