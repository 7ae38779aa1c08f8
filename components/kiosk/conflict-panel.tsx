'use client';
import type { JobEvent } from '@/lib/job';
import { eventWords, type Conflict } from '@/lib/outbox';
import type { Revision } from '@/lib/procedure';
import { Button } from '../design/button';
import { Glyph, type GlyphName } from '../design/glyph';
import { Panel } from '../design/panel';
import { clockText } from '../design/duration';

function Side({
  title,
  glyph,
  events,
  revision,
  nameOf,
}: {
  readonly title: string;
  readonly glyph: GlyphName;
  readonly events: readonly JobEvent[];
  readonly revision: Revision;
  readonly nameOf: (person: string) => string;
}) {
  return (
    <section aria-label={title} className="flex flex-col gap-3">
      <h3 className="flex items-center gap-3 text-glance font-bold">
        <Glyph name={glyph} />
        {title}
      </h3>
      <ol className="flex flex-col gap-2 text-body">
        {events.map((event) => (
          <li key={event.id} className="border-l-4 border-line pl-4">
            {eventWords(revision, event)}
            <span className="block text-quiet">
              {clockText(event.at)} · {nameOf(event.actor)}
            </span>
          </li>
        ))}
      </ol>
    </section>
  );
}

const leads = {
  overtaken:
    'Both sides are below. Look at the vehicle, then say which way it goes. Nothing is thrown away.',
  refused: 'What was done here stays on this kiosk until you say what becomes of it.',
} as const;

/** What was done here and what is stored instead, side by side, until somebody says which way it goes. */
export function ConflictPanel({
  conflict,
  nameOf,
  onTop,
  onAside,
  onAgain,
}: {
  readonly conflict: Conflict;
  readonly nameOf: (person: string) => string;
  /** Mine on top of theirs. */
  readonly onTop: () => void;
  readonly onAside: () => void;
  /** Sends the same once more. */
  readonly onAgain: () => void;
}) {
  const { theirs, mine, job, onTop: fits, message } = conflict;
  const refused = theirs.length === 0;
  return (
    <Panel
      title={refused ? 'The server does not store this' : 'This job went on at another place'}
      lead={refused ? `${message ?? ''} ${leads.refused}`.trim() : leads.overtaken}
    >
      <div className="flex flex-col gap-6 pr-3">
        <div className="flex flex-wrap items-center gap-4">
          {refused ? (
            <Button kind="main" glyph="turn" onPress={onAgain}>
              Try again
            </Button>
          ) : (
            <Button kind="main" glyph="forward" onPress={onTop} disabled={!fits.ok}>
              Put mine on top of theirs
            </Button>
          )}
          <Button glyph="note" onPress={onAside}>
            {message === undefined && job.phase !== 'closed'
              ? 'Go on with theirs, note mine for the foreman'
              : 'Go on with theirs, keep mine on this kiosk'}
          </Button>
        </div>
        {fits.ok || refused ? null : (
          <p className="text-body">
            <span className="font-bold">Mine does not fit on top: </span>
            {fits.error}
          </p>
        )}
        <div className="grid gap-8 wide:grid-cols-2">
          <Side
            title={`Mine, not stored: ${mine.length}`}
            glyph="cut"
            events={mine}
            revision={job.revision}
            nameOf={nameOf}
          />
          <Side
            title={`Theirs, stored: ${theirs.length}`}
            glyph="tick"
            events={theirs}
            revision={job.revision}
            nameOf={nameOf}
          />
        </div>
      </div>
    </Panel>
  );
}
