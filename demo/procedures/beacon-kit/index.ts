import type { Revision } from '@/lib/procedure';
import { beaconKitDrawings } from './drawings';
import { beaconKitGroups } from './groups';
import { beaconKitMaterials } from './materials';
import { stepsRoof } from './steps-roof';
import { stepsWiring } from './steps-wiring';

export const beaconKit: Revision = {
  procedure: 'beacon-kit',
  revision: 1,
  title: 'Fit the beacon and work lamp kit',
  summary: 'Kit counted, bracket sealed to the roof, harness routed and tied, voltage proven.',
  publishedAt: '2026-02-02T08:00:00Z',
  appliesTo: 'Fleet vehicles F-001 to F-040 with a steel roof and a 12 V system',
  source: { sheet: 'Fleet sheet FS-21', revision: 'issue A' },
  ...beaconKitMaterials,
  groups: beaconKitGroups,
  drawings: beaconKitDrawings,
  steps: [...stepsRoof, ...stepsWiring],
};
