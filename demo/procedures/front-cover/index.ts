import type { Revision } from '@/lib/procedure';
import { frontCoverDrawings } from './drawings';
import { frontCoverGroups } from './groups';
import { frontCoverMaterials } from './materials';
import { stepsApart } from './steps-apart';
import { stepsCover } from './steps-cover';
import { stepsDrain } from './steps-drain';
import { stepsFront } from './steps-front';
import { stepsRunning } from './steps-running';

export const frontCover: Revision = {
  procedure: 'front-cover-reseal',
  revision: 1,
  title: 'Reseal the front cover and coolant pump',
  summary:
    'Front cover off, new crankshaft seal and pump ring, cover back with three bolt lengths, fluids back and checked.',
  publishedAt: '2026-01-12T08:00:00Z',
  appliesTo: 'Fleet utility vehicles F-010 to F-029 with the three-cylinder 1.1 L diesel',
  source: { sheet: 'Fleet sheet FS-12', revision: 'issue C' },
  ...frontCoverMaterials,
  groups: frontCoverGroups,
  drawings: frontCoverDrawings,
  steps: [...stepsDrain, ...stepsApart, ...stepsCover, ...stepsFront, ...stepsRunning],
};
