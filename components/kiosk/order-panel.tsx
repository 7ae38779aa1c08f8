'use client';
import { passPlan } from '@/lib/fastening';
import type { JobState } from '@/lib/job';
import type { Step } from '@/lib/procedure';
import { Panel } from '../design/panel';
import { DrawingView } from '../step/drawing-view';
import { stepMarks } from './step-marks';

const stageNames = { snug: 'Snug', intermediate: 'Intermediate', final: 'Final' } as const;

/** The tightening order of this step's joint, as large as it goes. */
export function OrderPanel({
  job,
  step,
  chosen,
  onChoose,
  onClose,
}: {
  readonly job: JobState;
  readonly step: Step;
  readonly chosen: string | undefined;
  readonly onChoose: (fastener: string) => void;
  readonly onClose: () => void;
}) {
  const marks = stepMarks(job, step, chosen);
  const ordered = marks.filter(({ ordinal }) => ordinal !== undefined);
  const group = job.revision.groups.find(({ fasteners }) =>
    fasteners.some(({ id }) => id === (ordered[0] ?? marks[0])?.fastener),
  );
  const drawing = job.revision.drawings.find(({ id }) => id === group?.drawing);
  if (group === undefined || drawing === undefined)
    return (
      <Panel title="Tightening order" onClose={onClose}>
        <p className="text-read">This step tightens nothing in an order.</p>
      </Panel>
    );
  const rounds = passPlan(group, drawing);
  return (
    <Panel
      title={`Tightening order: ${group.name}`}
      onClose={onClose}
      lead={
        rounds[0]?.from === 'sheet'
          ? 'The order of the maker’s sheet.'
          : 'Computed from where the holes lie; the sheet gives none.'
      }
    >
      <div className="flex h-full min-h-[36rem] flex-col gap-4">
        <DrawingView
          drawing={drawing}
          marks={ordered.length === 0 ? marks : ordered}
          onChoose={onChoose}
        />
        <p className="text-read font-bold">{ordered.map(({ label }) => label).join(' → ')}</p>
        <p className="text-body text-quiet">
          Passes: {rounds.map(({ pass }) => stageNames[pass.stage]).join(', then ')}
        </p>
      </div>
    </Panel>
  );
}
