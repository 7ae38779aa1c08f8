'use client';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { closeMark } from './mark-link';

/** A writer says that a mark was dealt with. */
export function MarkDone({ id, what }: { readonly id: string; readonly what: string }) {
  const router = useRouter();
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string>();
  return (
    <>
      <button
        type="button"
        disabled={busy}
        aria-label={`Dealt with: ${what}`}
        className="min-h-[2.6rem] rounded-small border-2 border-edge bg-surface px-4 text-note"
        onClick={() => {
          setBusy(true);
          void closeMark(id).then((closed) => {
            setBusy(false);
            if (closed.ok) router.refresh();
            else setProblem(closed.error);
          });
        }}
      >
        Dealt with
      </button>
      {problem === undefined ? null : (
        <p role="alert" className="text-note font-bold text-bad">
          {problem}
        </p>
      )}
    </>
  );
}
