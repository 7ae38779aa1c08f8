'use client';
import type { JobState } from '@/lib/job';
import type { LooseEnd } from '@/lib/ledger';
import type { HoldReason } from '@/lib/voice';
import { Button } from '../design/button';
import { Panel } from '../design/panel';
import { clockText } from '../design/duration';
import { keyOf } from './key-of';
import { ReasonText } from './reason-text';

const reasons: readonly { reason: HoldReason; label: string }[] = [
  { reason: 'parts', label: 'Waiting for parts' },
  { reason: 'tool', label: 'Waiting for a tool' },
  { reason: 'foreman', label: 'Waiting for the foreman' },
  { reason: 'approval', label: 'Waiting for approval' },
  { reason: 'break', label: 'Break' },
];

/** Why the job stops for now. */
export function HoldPanel({
  onReason,
  onOther,
  onClose,
}: {
  readonly onReason: (reason: HoldReason) => void;
  readonly onOther: () => void;
  readonly onClose: () => void;
}) {
  return (
    <Panel title="Hold the job: why?" onClose={onClose}>
      <div className="grid gap-4 wide:grid-cols-2">
        {reasons.map(({ reason, label }) => (
          <Button
            key={reason}
            wide
            className="min-h-[8rem] text-glance font-bold"
            onPress={() => {
              onReason(reason);
            }}
          >
            {label}
          </Button>
        ))}
        <Button wide className="min-h-[8rem] text-glance" onPress={onOther}>
          Another reason
        </Button>
      </div>
    </Panel>
  );
}

/** A job on hold: since when and why, and what is loose on the vehicle meanwhile. */
export function HeldView({
  hold,
  ends,
  nameOf,
  onResume,
}: {
  readonly hold: NonNullable<JobState['hold']>;
  readonly ends: readonly LooseEnd[];
  readonly nameOf: (person: string) => string;
  readonly onResume: () => void;
}) {
  const loose = ends.filter(({ kind }) => ['fluidOut', 'partOff', 'fastenerOpen'].includes(kind));
  return (
    <section
      aria-labelledby="held"
      className="flex h-full min-h-0 flex-col gap-6 rounded-block border-4 border-edge bg-surface p-8"
    >
      <h2 id="held" className="text-[5rem] leading-[1.1] font-bold">
        On hold since {clockText(hold.since)}
      </h2>
      <p className="text-read">
        <ReasonText reason={hold.reason} />
        <span className="text-body text-quiet"> · {nameOf(hold.by)}</span>
      </p>
      <div
        className="min-h-0 grow overflow-y-auto"
        tabIndex={0}
        role="group"
        aria-label="Loose on the vehicle"
      >
        <h3 className="text-glance font-bold">
          {loose.length === 0
            ? 'Nothing is loose on the vehicle'
            : 'Do not start or move the vehicle: loose right now'}
        </h3>
        <ul className="text-glance">
          {loose.map((end) => (
            <li key={end.key}>
              {end.text}
              {end.detail === undefined ? null : (
                <span className="text-quiet"> · {end.detail}</span>
              )}
            </li>
          ))}
        </ul>
      </div>
      <div>
        <Button
          kind="main"
          glyph="play"
          keys={keyOf('resume')}
          onPress={onResume}
          className="min-h-[7rem] px-12 text-read"
        >
          Resume
        </Button>
      </div>
    </section>
  );
}
