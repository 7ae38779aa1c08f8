'use client';
import { useRouter } from 'next/navigation';
import { useEffect, useId, useRef, useState } from 'react';
import { markSheet, type SheetWish } from './mark-link';

const button =
  'min-h-[2.6rem] rounded-small border-2 px-4 text-note disabled:border-line disabled:bg-sunk disabled:text-quiet';

/** "Change the sheet": a foreman says in a few words what the writer of the procedure should change. */
export function ChangeSheet({ at }: { readonly at: Omit<SheetWish, 'note'> }) {
  const router = useRouter();
  const id = useId();
  const field = useRef<HTMLTextAreaElement>(null);
  const [open, setOpen] = useState(false);
  const [note, setNote] = useState('');
  const [state, setState] = useState<'idle' | 'busy' | 'sent'>('idle');
  const [problem, setProblem] = useState<string>();
  useEffect(() => {
    if (open) field.current?.focus();
  }, [open]);
  if (state === 'sent')
    return (
      <p role="status" className="text-note font-bold text-good">
        Marked for the writer of the sheet.
      </p>
    );
  if (!open)
    return (
      <button
        type="button"
        className={`${button} border-edge bg-surface`}
        onClick={() => {
          setOpen(true);
        }}
      >
        Change the sheet
      </button>
    );
  return (
    <form
      className="flex max-w-[50rem] flex-col gap-2"
      onSubmit={(submitted) => {
        submitted.preventDefault();
        setState('busy');
        setProblem(undefined);
        void markSheet({ ...at, note: note.trim() }).then((sent) => {
          setState(sent.ok ? 'sent' : 'idle');
          if (sent.ok) router.refresh();
          else setProblem(sent.error);
        });
      }}
    >
      <label htmlFor={`${id}note`} className="text-note font-bold">
        What should the sheet say instead?
      </label>
      <textarea
        id={`${id}note`}
        ref={field}
        value={note}
        rows={2}
        maxLength={500}
        onChange={(change) => {
          setNote(change.target.value);
        }}
        className="rounded-small border-2 border-edge bg-ground p-2 text-note"
      />
      {problem === undefined ? null : (
        <p role="alert" className="text-note font-bold text-bad">
          {problem}
        </p>
      )}
      <div className="flex gap-3">
        <button
          type="submit"
          disabled={state === 'busy' || note.trim() === ''}
          className={`${button} border-act bg-act font-bold text-act-ink`}
        >
          Mark the sheet
        </button>
        <button
          type="button"
          className={`${button} border-edge bg-surface`}
          onClick={() => {
            setOpen(false);
          }}
        >
          Leave it
        </button>
      </div>
    </form>
  );
}
