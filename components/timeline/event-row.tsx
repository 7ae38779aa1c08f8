import type { ReactNode } from 'react';
import type { ShownRow } from '@/lib/timeline';
import { Glyph } from '../design/glyph';
import { VerdictMark } from '../step/verdict-mark';

/** What happened, without when: the words, why, what was heard, and what it changed. */
export function EventWords({ row }: { readonly row: ShownRow }) {
  const { verdict, since, reason, clip, heard, heardBefore, details } = row;
  return (
    <>
      <p className="font-bold">
        {row.what}
        {verdict === undefined ? null : (
          <>
            {' '}
            <VerdictMark verdict={verdict} className="ml-2" />
          </>
        )}
        {since === undefined ? null : <span className="font-normal"> ({since})</span>}
      </p>
      {reason === undefined ? null : <p>Why: {reason}</p>}
      {clip === undefined ? null : (
        <audio
          controls
          preload="none"
          src={`/api/clips/${clip}`}
          aria-label={`Spoken: ${reason ?? row.what}`}
        />
      )}
      {details.map((detail) => (
        <p key={detail}>{detail}</p>
      ))}
      {heard === undefined ? null : (
        <p className="flex items-baseline gap-2 text-quiet">
          <Glyph name="ear" className="self-center" />
          <span>
            Heard “{heard.said}”, {heard.how}
          </span>
        </p>
      )}
      {heardBefore.length === 0 ? null : (
        <p className="text-quiet">Heard before it: {heardBefore.join('; ')}</p>
      )}
    </>
  );
}

/** One event of the list; its number leads to the moment right after it. */
export function EventRow({
  row,
  now,
  link,
}: {
  readonly row: ShownRow;
  readonly now: boolean;
  readonly link: ReactNode;
}) {
  return (
    <li
      data-seq={row.seq}
      data-now={now || undefined}
      className={`grid gap-x-5 border-b border-line py-2 pl-3 wide:grid-cols-[9rem_1fr_20rem] ${now ? 'border-l-8 border-l-ink bg-surface' : 'border-l-8 border-l-transparent'}`}
    >
      <div>
        {link}
        <p>{row.clock}</p>
      </div>
      <div className="min-w-0 break-words">
        <EventWords row={row} />
      </div>
      <div className="min-w-0 text-quiet">
        <p>
          {row.who}, {row.bay}
        </p>
        {row.step === undefined ? null : <p>Step {row.step}</p>}
      </div>
    </li>
  );
}
