'use client';
import { useId, useState } from 'react';
import { Button } from './button';
import { LetterPad } from './letter-pad';

/** One line or more of text: by a keyboard where there is one, else by letters large enough for a glove. */
export function TextEntry({
  label,
  value,
  onChange,
  lines = 1,
  letters = 'sentence',
  onEnter,
}: {
  readonly label: string;
  readonly value: string;
  readonly onChange: (text: string) => void;
  readonly lines?: number;
  readonly letters?: 'sentence' | 'plate';
  readonly onEnter?: () => void;
}) {
  const id = useId();
  const [pad, setPad] = useState(false);
  const look =
    'w-full rounded-block border-2 border-edge bg-ground px-4 py-3 text-glance placeholder:text-quiet';
  return (
    <div className="flex flex-col gap-3">
      <label htmlFor={id} className="text-body font-bold">
        {label}
      </label>
      <div className="flex items-stretch gap-3">
        {lines > 1 ? (
          <textarea
            id={id}
            rows={lines}
            value={value}
            maxLength={2000}
            onChange={(event) => {
              onChange(event.target.value);
            }}
            className={look}
          />
        ) : (
          <input
            id={id}
            type="text"
            value={value}
            autoComplete="off"
            spellCheck={false}
            maxLength={120}
            onChange={(event) => {
              onChange(event.target.value);
            }}
            onKeyDown={(event) => {
              if (event.key === 'Enter') onEnter?.();
            }}
            className={look}
          />
        )}
        <Button
          pressed={pad}
          kind={pad ? 'chosen' : 'plain'}
          onPress={() => {
            setPad(!pad);
          }}
        >
          Letters
        </Button>
      </div>
      {pad ? (
        <LetterPad
          capitals={letters === 'plate'}
          onLetter={(letter) => {
            onChange(value + letter);
          }}
          onRubOut={() => {
            onChange(value.slice(0, -1));
          }}
        />
      ) : null}
    </div>
  );
}
