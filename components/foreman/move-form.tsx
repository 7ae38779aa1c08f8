'use client';
import { useState } from 'react';
import type { JobState } from '@/lib/job';
import type { Person } from '@/lib/people';
import type { Bay } from '@/lib/shop';
import { Button } from '../design/button';
import { moveAct, type ForemanAct } from './acts';

const field = 'min-h-glove rounded-block border-2 border-edge bg-surface px-3';

/** Where the job goes and who takes it. */
export function MoveForm({
  job,
  bays,
  freeBays,
  mechanics,
  onAct,
}: {
  readonly job: JobState;
  readonly bays: readonly Bay[];
  /** Bays without a job. */
  readonly freeBays: ReadonlySet<string>;
  readonly mechanics: readonly Person[];
  readonly onAct: (act: ForemanAct) => void;
}) {
  const [bay, setBay] = useState(job.bay);
  const [mechanic, setMechanic] = useState('');
  const changes = bay !== job.bay || mechanic !== '';
  return (
    <section aria-labelledby="move" className="flex flex-col gap-3">
      <h2 id="move" className="text-glance font-bold">
        Move the job
      </h2>
      <div className="grid gap-3 wide:grid-cols-2">
        <label className="flex flex-col gap-1">
          <span>To bay</span>
          <select
            value={bay}
            className={field}
            onChange={(change) => {
              setBay(change.target.value);
            }}
          >
            {bays
              .filter(({ id }) => id === job.bay || freeBays.has(id))
              .map(({ id, name }) => (
                <option key={id} value={id}>
                  {id === job.bay ? `${name} (stays)` : name}
                </option>
              ))}
          </select>
        </label>
        <label className="flex flex-col gap-1">
          <span>To mechanic</span>
          <select
            value={mechanic}
            className={field}
            onChange={(change) => {
              setMechanic(change.target.value);
            }}
          >
            <option value="">Nobody named</option>
            {mechanics.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
      </div>
      <div>
        <Button
          disabled={!changes}
          onPress={() => {
            onAct(moveAct(bay, mechanic === '' ? undefined : mechanic));
          }}
        >
          Move the job
        </Button>
      </div>
    </section>
  );
}
