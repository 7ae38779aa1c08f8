import type { Revision } from '@/lib/procedure';

type Materials = Pick<Revision, 'kit' | 'tools' | 'consumables' | 'fluids' | 'parts'>;

export const beaconKitMaterials: Materials = {
  kit: [
    { id: 'bracket', name: 'Roof bracket', quantity: 1 },
    { id: 'roof-bolt', name: 'Roof bolt, M8 by 25', quantity: 4 },
    { id: 'stud', name: 'Stud, M8 by 30', quantity: 2 },
    { id: 'flange-nut', name: 'Self-locking nut, M8', quantity: 2 },
    { id: 'beacon', name: 'Beacon with work lamp', quantity: 1 },
    { id: 'harness', name: 'Wiring harness', quantity: 1 },
    { id: 'grommet', name: 'Bulkhead grommet', quantity: 1 },
    { id: 'tie', name: 'Cable tie', quantity: 10 },
    { id: 'relay', name: 'Relay', quantity: 1 },
    { id: 'relay-screw', name: 'Relay screw, M5 by 12', quantity: 1 },
    { id: 'switch-panel', name: 'Switch panel', quantity: 1 },
    { id: 'panel-screw', name: 'Panel screw, M5 by 16', quantity: 4 },
    // One is a spare for the glove box and stays left over.
    { id: 'fuse', name: 'Blade fuse, 15 A', quantity: 2 },
  ],
  tools: [
    { id: 'torque-small', name: 'Torque wrench, 5 to 25 N·m', special: false },
    { id: 'multimeter', name: 'Multimeter', special: false },
    { id: 'stud-driver', name: 'Stud driver, M8', special: true },
  ],
  consumables: [
    { id: 'roof-sealant', name: 'Roof sealant', kind: 'sealant' },
    { id: 'contact-grease', name: 'Contact grease', kind: 'grease' },
    {
      id: 'stud-locker',
      name: 'Thread-locker, high strength',
      kind: 'threadLocker',
      strength: 'high',
    },
    {
      id: 'screw-locker',
      name: 'Thread-locker, low strength',
      kind: 'threadLocker',
      strength: 'low',
    },
  ],
  fluids: [],
  parts: [
    { id: 'earth-lead', name: 'Battery earth lead', starts: 'on', reuse: 'always' },
    { id: 'roof-bracket', name: 'Roof bracket', starts: 'off', reuse: 'always' },
    { id: 'beacon-lamp', name: 'Beacon with work lamp', starts: 'off', reuse: 'always' },
    { id: 'bulkhead-grommet', name: 'Bulkhead grommet', starts: 'off', reuse: 'always' },
    { id: 'wiring-harness', name: 'Wiring harness', starts: 'off', reuse: 'always' },
    { id: 'power-relay', name: 'Relay', starts: 'off', reuse: 'always' },
    { id: 'panel', name: 'Switch panel', starts: 'off', reuse: 'always' },
    { id: 'main-fuse', name: 'Main fuse', starts: 'off', reuse: 'always' },
  ],
};
