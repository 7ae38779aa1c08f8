import type { Revision } from '@/lib/procedure';

type Materials = Pick<Revision, 'kit' | 'tools' | 'consumables' | 'fluids' | 'parts'>;

export const frontHubMaterials: Materials = {
  kit: [
    { id: 'pad-set', name: 'Brake pad set', quantity: 1 },
    { id: 'disc', name: 'Brake disc', quantity: 1 },
    { id: 'calliper-bolt', name: 'Calliper bolt', quantity: 2 },
    { id: 'hub-nut', name: 'Hub nut with staking collar', quantity: 1 },
  ],
  tools: [
    { id: 'stands', name: 'Jack and two axle stands', special: false },
    { id: 'torque-small', name: 'Torque wrench, 5 to 25 N·m', special: false },
    { id: 'torque-large', name: 'Torque wrench, 40 to 200 N·m', special: false },
    { id: 'angle-gauge', name: 'Angle gauge', special: false },
    { id: 'dial-gauge', name: 'Dial gauge with foot', special: false },
    { id: 'disc-caliper', name: 'Micrometer for discs', special: false },
    { id: 'bleed-set', name: 'Bleeding set with measuring bottle', special: true },
  ],
  consumables: [
    { id: 'brake-cleaner', name: 'Brake cleaner', kind: 'cleaner' },
    { id: 'bearing-grease', name: 'Bearing grease', kind: 'grease' },
  ],
  fluids: [
    { id: 'brake-fluid', name: 'Brake fluid', capacityL: 0.5, toleranceL: 0.1, mayReturn: false },
  ],
  parts: [
    { id: 'road-wheel', name: 'Front wheel', starts: 'on', reuse: 'always' },
    { id: 'calliper', name: 'Brake calliper', starts: 'on', reuse: 'always' },
    { id: 'pads', name: 'Brake pads', starts: 'on', reuse: 'never' },
    { id: 'brake-disc', name: 'Brake disc', starts: 'on', reuse: 'ask' },
    { id: 'speed-sensor', name: 'Wheel speed sensor', starts: 'on', reuse: 'always' },
    { id: 'dust-cap', name: 'Hub dust cap', starts: 'on', reuse: 'always' },
    { id: 'hub', name: 'Front hub', starts: 'on', reuse: 'always' },
  ],
};
