import type { JobEvent } from '../job';
import type { Role } from '../people';

const roleNames: Readonly<Record<Role, string>> = {
  mechanic: 'Mechanic',
  foreman: 'Foreman',
  writer: 'Sheet writer',
  admin: 'Administrator',
};

/**
 * What people are called in one job for whoever may not see their names: "Mechanic 1", "Foreman 1", in the order in
 * which they first come up. The numbers mean nothing in another job.
 */
export const pseudonyms = (events: readonly JobEvent[]): ((person: string) => string) => {
  const names = new Map<string, string>();
  const counts = new Map<Role, number>();
  const meet = (person: string, role: Role): void => {
    if (names.has(person)) return;
    const count = (counts.get(role) ?? 0) + 1;
    counts.set(role, count);
    names.set(person, `${roleNames[role]} ${count}`);
  };
  for (const { actor, role, happening } of events) {
    meet(actor, role);
    if (happening.type === 'jobReassigned' && happening.mechanic !== undefined)
      meet(happening.mechanic, 'mechanic');
  }
  return (person) => names.get(person) ?? 'Somebody';
};
