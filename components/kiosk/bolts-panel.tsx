'use client';
import type { FastenerStage, JobState } from '@/lib/job';
import { Panel } from '../design/panel';

export const stageWords: Readonly<Record<FastenerStage, string>> = {
  untouched: 'in place, untouched',
  loose: 'loosened',
  off: 'off',
  runIn: 'run in by hand, not tight',
  snug: 'snug',
  intermediate: 'intermediate',
  final: 'final',
};

/** Every fastener: size, length, where it is and how far it is tightened. */
export function BoltsPanel({
  job,
  onClose,
}: {
  readonly job: JobState;
  readonly onClose: () => void;
}) {
  return (
    <Panel title="Bolts, nuts and plugs" onClose={onClose}>
      <div className="flex flex-col gap-8 pr-3">
        {job.revision.groups.map((group) => (
          <table key={group.id} className="w-full border-collapse text-left text-glance">
            <caption className="text-left text-glance font-bold">
              {group.name}
              <span className="ml-4 text-body font-normal text-quiet">
                {group.thread} · {group.strengthClass}
                {group.safetyCritical ? ' · safety-critical' : ''}
              </span>
            </caption>
            <thead className="text-body text-quiet">
              <tr>
                <th scope="col" className="w-[10rem] font-normal">
                  {group.noun}
                </th>
                <th scope="col" className="w-[12rem] font-normal">
                  length
                </th>
                <th scope="col" className="font-normal">
                  stands
                </th>
                <th scope="col" className="font-normal">
                  lies in
                </th>
              </tr>
            </thead>
            <tbody>
              {group.fasteners.map(({ id, label, lengthMm, singleUse }) => {
                const fastener = job.fasteners[id];
                return (
                  <tr key={id} className="border-t border-line">
                    <th scope="row" className="py-1 font-bold">
                      {label}
                    </th>
                    <td>{lengthMm === undefined ? '–' : `${lengthMm} mm`}</td>
                    <td>
                      {fastener === undefined ? '–' : stageWords[fastener.stage]}
                      {fastener?.threadLockerDue === true ? ', thread-locker due' : ''}
                      {fastener?.replacementDue === true || (singleUse && fastener === undefined)
                        ? ', new one due'
                        : ''}
                    </td>
                    <td>
                      {fastener?.lies === undefined
                        ? '–'
                        : `${fastener.lies.tray}, place ${fastener.lies.place}`}
                    </td>
                  </tr>
                );
              })}
            </tbody>
          </table>
        ))}
      </div>
    </Panel>
  );
}
