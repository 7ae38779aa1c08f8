import { checkGroups } from './check-groups';
import { checkMaterials } from './check-materials';
import { checkReferences } from './check-references';
import { checkSteps } from './check-steps';
import type { Fault } from './fault';
import type { Revision } from './revision';

/** What keeps a revision from being published; empty when nothing does. The shape is the schema's business. */
export const checkRevision = (revision: Revision): readonly Fault[] => [
  ...checkReferences(revision),
  ...checkGroups(revision),
  ...checkMaterials(revision),
  ...checkSteps(revision),
];
