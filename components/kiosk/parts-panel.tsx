'use client';
import type { JobState } from '@/lib/job';
import { formatQuantity } from '@/lib/quantity';
import { Button } from '../design/button';
import { Panel } from '../design/panel';

const reuseWords = {
  always: 'used again',
  ask: 'used again or replaced: say which',
  never: 'new each time',
} as const;

/** " · 8.4 L drained · 0.1 L spilled" */
const volumes = (fluid: JobState['fluids'][string] | undefined): string =>
  (
    [
      [fluid?.drainedL, 'drained'],
      [fluid?.spilledL, 'spilled'],
      [fluid?.returnedL, 'returned'],
      [fluid?.filledL, 'filled'],
    ] as const
  )
    .map(([litres, what]) =>
      litres === undefined ? '' : ` · ${formatQuantity(litres, 'L')} ${what}`,
    )
    .join('');

function Group({ title, children }: { title: string; children: React.ReactNode }) {
  return (
    <section aria-label={title}>
      <h3 className="border-b-2 border-line pb-1 text-body font-bold text-quiet">{title}</h3>
      <ul className="text-glance">{children}</ul>
    </section>
  );
}

/** Kit, parts, fluids, consumables and tools of the job, and where each of them stands. */
export function PartsPanel({
  job,
  onLeftOver,
  onClose,
}: {
  readonly job: JobState;
  readonly onLeftOver: (kitItem: string, count: number) => void;
  readonly onClose: () => void;
}) {
  const { revision } = job;
  return (
    <Panel title="Parts, kit and tools" onClose={onClose}>
      <div className="grid gap-8 wide:grid-cols-2">
        <Group title="Kit">
          {revision.kit.map(({ id, name, quantity }) => {
            const { used = 0, leftOver = 0 } = job.kit[id] ?? {};
            const rest = quantity - used - leftOver;
            return (
              <li key={id} className="flex items-center justify-between gap-4 py-1">
                <span>
                  {quantity} × {name}
                  <span className="block text-body text-quiet">
                    {used} fitted{leftOver === 0 ? '' : ` · ${leftOver} left over`} · {rest} to go
                  </span>
                </span>
                {rest > 0 && job.phase === 'running' ? (
                  <Button
                    onPress={() => {
                      onLeftOver(id, rest);
                    }}
                  >
                    Left over
                  </Button>
                ) : null}
              </li>
            );
          })}
        </Group>
        <Group title="Parts">
          {revision.parts.map(({ id, name, reuse }) => {
            const part = job.parts[id];
            return (
              <li key={id} className="py-1">
                {name}
                <span className="block text-body text-quiet">
                  {part?.where === 'off'
                    ? `off${part.tray === undefined ? '' : `, ${part.tray}`}`
                    : 'on'}
                  {part?.fitted === undefined ? '' : `, fitted ${part.fitted}`} ·{' '}
                  {reuseWords[reuse]}
                </span>
              </li>
            );
          })}
        </Group>
        <Group title="Fluids">
          {revision.fluids.map(({ id, name, capacityL, mayReturn }) => (
            <li key={id} className="py-1">
              {name}, {capacityL} L
              <span className="block text-body text-quiet">
                {mayReturn ? 'what was drained may go back' : 'new only'}
                {volumes(job.fluids[id])}
              </span>
            </li>
          ))}
        </Group>
        <Group title="Consumables and tools">
          {revision.consumables.map((item) => (
            <li key={item.id} className="py-1">
              {item.name}
              {item.kind === 'threadLocker' ? (
                <span className="text-body text-quiet"> · {item.strength} strength</span>
              ) : null}
            </li>
          ))}
          {revision.tools.map(({ id, name, special }) => (
            <li key={id} className="py-1">
              {name}
              {special ? <span className="text-body text-quiet"> · special tool</span> : null}
            </li>
          ))}
        </Group>
      </div>
    </Panel>
  );
}
