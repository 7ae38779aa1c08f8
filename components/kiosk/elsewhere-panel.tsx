'use client';
import type { JobState } from '@/lib/job';
import { Button } from '../design/button';
import { Panel } from '../design/panel';
import { clockText } from '../design/duration';

/** The job is in work at another kiosk: it goes on here only when somebody says so. */
export function ElsewherePanel({
  at,
  nameOf,
  onTakeOver,
  onLeave,
}: {
  readonly at: NonNullable<JobState['atKiosk']>;
  readonly nameOf: (person: string) => string;
  readonly onTakeOver: () => void;
  readonly onLeave: () => void;
}) {
  return (
    <Panel title="This job is in work at another kiosk">
      <div className="flex flex-col items-start gap-5">
        <p className="text-glance">
          {nameOf(at.by)} worked on it there; the last entry came at {clockText(at.at)}.
        </p>
        <p className="text-body text-quiet">
          Ask at the other kiosk first. What was done there and is not stored yet does not show
          here; it will be shown as a conflict when it comes.
        </p>
        <div className="flex flex-wrap gap-3">
          <Button kind="main" glyph="hand" onPress={onTakeOver}>
            Take it over here
          </Button>
          <Button glyph="person" onPress={onLeave}>
            Leave it there and sign off
          </Button>
        </div>
      </div>
    </Panel>
  );
}
