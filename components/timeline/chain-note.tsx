import { Glyph } from '../design/glyph';

/** Whether the record is as it was written: it was looked at for this page. */
export function ChainNote({
  chain,
  stored,
  stoppedAt,
}: {
  readonly chain: { readonly head: string | undefined; readonly broken: string | undefined };
  readonly stored: number;
  readonly stoppedAt: number | undefined;
}) {
  const { head, broken } = chain;
  return (
    <div className="flex flex-col gap-1">
      {broken === undefined ? (
        <p className="flex items-baseline gap-3">
          <Glyph name="tick" className="self-center text-good" />
          <span className="min-w-0">
            <strong>Record unbroken</strong>, {stored} {stored === 1 ? 'event' : 'events'}, head{' '}
            <code className="break-all">{head}</code>. It proves itself only against a head that was
            kept elsewhere.
          </span>
        </p>
      ) : (
        <p
          role="alert"
          className="flex items-baseline gap-3 rounded-block border-4 border-bad p-3 font-bold text-bad"
        >
          <Glyph name="alert" className="self-center" />
          <span>
            Record broken: {broken} What is told here from that event on is not to be relied upon.
          </span>
        </p>
      )}
      {stoppedAt === undefined ? null : (
        <p className="font-bold">
          From event {stoppedAt} on the record does not follow from itself: the last{' '}
          {stored - stoppedAt + 1} of {stored} events cannot be shown.
        </p>
      )}
    </div>
  );
}
