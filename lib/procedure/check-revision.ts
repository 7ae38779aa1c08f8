import { checkGroups } from './check-groups';
import { checkMaterials } from './check-materials';
import { checkReferences } from './check-references';
import { checkSteps } from './check-steps';
import type { Doubt, Fault, Finding } from './fault';
import type { Revision } from './revision';

export interface RevisionCheck {
  /** What keeps it from being published. */
  readonly faults: readonly Fault[];
  /** What its writer should look at again: most likely a slip, perhaps just unusual. */
  readonly doubts: readonly Doubt[];
}

/** What is found wrong or odd in a revision, in the order of its parts. The shape is the schema's business. */
export const checkRevision = (revision: Revision): RevisionCheck => {
  const found: readonly Finding[] = [
    ...checkReferences(revision),
    ...checkGroups(revision),
    ...checkMaterials(revision),
    ...checkSteps(revision),
  ];
  return {
    faults: found.filter((one) => one.severity === 'fault'),
    doubts: found.filter((one) => one.severity === 'doubt'),
  };
};
