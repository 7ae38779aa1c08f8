import { v7 as newId } from 'uuid';
import { demoProcedures } from '../../demo';
import { openJob, writeEvent, type JobEvent } from '../job';
import type { Person } from '../people';
import type { BenchJob } from './bench-wall-shop';

/** A job just opened on the demo's first procedure, with the event that opens it. */
export const newBenchJob = (
  bay: string,
  person: Person,
  atMs: number,
): BenchJob & { readonly opening: JobEvent } => {
  const [revision] = demoProcedures;
  if (revision === undefined) throw new Error('the demo has no procedures');
  const device = 'bench';
  const opening = writeEvent(
    { job: newId(), seq: 0 },
    {
      type: 'jobOpened',
      procedure: revision.procedure,
      revision: revision.revision,
      vehicle: { plate: 'F-001', description: 'Utility vehicle' },
      bay,
    },
    {
      now: new Date(atMs).toISOString(),
      newId: () => newId(),
      actor: person.id,
      role: person.role,
      device,
      input: { by: 'touch' },
    },
  );
  const state = openJob(revision, opening);
  if (!state.ok) throw new Error(state.error.message);
  return { bay, person, cookie: '', device, state: state.value, opening };
};
