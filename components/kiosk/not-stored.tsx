import { Glyph } from '../design/glyph';
import { clockText } from '../design/duration';
import type { OutboxView } from './keep/outbox-runner';

/** How much of what was done here the server does not have yet; and once it cannot be reached, since when. */
export function NotStored({ outbox }: { readonly outbox: OutboxView }) {
  const { count, since, cutOff, trouble } = outbox;
  if (count === 0) return null;
  return (
    <p role="status" className="flex shrink-0 items-center gap-2 text-body font-bold text-unsure">
      <Glyph name={cutOff ? 'cut' : 'undo'} />
      {count} not yet stored
      {!cutOff || since === undefined
        ? ''
        : ` since ${clockText(since)}: server ${trouble === undefined ? 'not reached' : 'cannot store'}`}
    </p>
  );
}
