import type { BayCard, WantKind } from '@/lib/wall';
import type { GlyphName } from '../design/glyph';

export const wantSigns: Readonly<Record<WantKind, GlyphName>> = {
  foremanCalled: 'call',
  waitsForForeman: 'hand',
  outOfSpec: 'alert',
  signature: 'note',
  kioskOffline: 'noPower',
  cannotBeHeard: 'earOff',
  decision: 'query',
};

/** So long a call that was answered is shown as such. */
const answeredForMs = 120_000;

/** Who answered the bay's last call, where that is news. `nowMs` is the server's clock. */
export const answeredNow = ({ job }: BayCard, nowMs: number): string | undefined =>
  job?.answered !== undefined && nowMs - Date.parse(job.answered.at) < answeredForMs
    ? job.answered.by
    : undefined;

/** The one sign of a bay: what it wants, else how it stands; none where work simply goes on. */
export const signOf = (card: BayCard, nowMs: number): GlyphName | undefined => {
  const [want] = card.wants;
  if (want !== undefined) return wantSigns[want.kind];
  if (answeredNow(card, nowMs) !== undefined) return 'tick';
  return card.job?.phase === 'held' ? 'pause' : undefined;
};
