import type { Revision } from '@/lib/procedure';
import { frontHubDrawings } from './drawings';
import { frontHubGroups } from './groups';
import { frontHubMaterials } from './materials';
import { stepsApart } from './steps-apart';
import { stepsRoad } from './steps-road';
import { stepsTogether } from './steps-together';

export const frontHub: Revision = {
  procedure: 'front-hub-brake',
  revision: 1,
  title: 'Service the front hub and brake, one side',
  summary:
    'Hub greased with a new nut, new pads and calliper bolts, brake bled, wheel nuts in two passes, road test.',
  publishedAt: '2026-01-19T08:00:00Z',
  appliesTo: 'Fleet utility vehicles F-001 to F-029, front axle, left or right',
  source: { sheet: 'Fleet sheet FS-07', revision: 'issue F' },
  ...frontHubMaterials,
  groups: frontHubGroups,
  drawings: frontHubDrawings,
  steps: [...stepsApart, ...stepsTogether, ...stepsRoad],
};
