'use client';
import { useEffect } from 'react';
import { Glyph } from './glyph';

/**
 * Digits for gloves, and for the keyboard while it is shown. `hidden` shows how many were pressed but not which.
 */
export function NumberPad({
  label,
  value,
  onChange,
  onEnter,
  decimals,
  hidden = false,
  most = 8,
}: {
  readonly label: string;
  readonly value: string;
  readonly onChange: (text: string) => void;
  /** The enter key of a keyboard. */
  readonly onEnter: () => void;
  readonly decimals: boolean;
  readonly hidden?: boolean;
  readonly most?: number;
}) {
  const press = (key: string): void => {
    if (key === 'Backspace') onChange(value.slice(0, -1));
    else if (value.length < most && !(key === '.' && value.includes('.'))) onChange(value + key);
  };
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.target instanceof HTMLInputElement || event.target instanceof HTMLTextAreaElement)
        return;
      const key = event.key === ',' ? '.' : event.key;
      if (/^[0-9]$/.test(key) || key === 'Backspace' || (decimals && key === '.')) {
        event.preventDefault();
        press(key);
      } else if (key === 'Enter' && !(event.target instanceof HTMLButtonElement)) {
        event.preventDefault();
        onEnter();
      }
    };
    window.addEventListener('keydown', onKey);
    return () => {
      window.removeEventListener('keydown', onKey);
    };
  });
  const look =
    'min-h-[5.6rem] min-w-glove rounded-block border-2 border-edge bg-surface text-read font-bold';
  const key = (text: string) => (
    <button
      key={text}
      type="button"
      className={look}
      onClick={() => {
        press(text);
      }}
    >
      {text === '.' ? <span aria-label="point">.</span> : text}
    </button>
  );
  return (
    <div role="group" aria-label={label} className="flex w-[27rem] flex-col gap-3">
      <output
        aria-label={label}
        className="min-h-[5rem] rounded-block bg-sunk px-5 text-right text-[4rem] leading-[5rem] font-bold"
      >
        {hidden ? '•'.repeat(value.length) : value}
      </output>
      <div className="grid grid-cols-3 gap-3">
        {['7', '8', '9', '4', '5', '6', '1', '2', '3'].map(key)}
        {decimals ? key('.') : <span />}
        {key('0')}
        <button
          type="button"
          className={look}
          aria-label="Rub out the last digit"
          onClick={() => {
            press('Backspace');
          }}
        >
          <Glyph name="undo" />
        </button>
      </div>
    </div>
  );
}
