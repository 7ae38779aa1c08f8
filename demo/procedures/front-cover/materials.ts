import type { Revision } from '@/lib/procedure';

type Materials = Pick<Revision, 'kit' | 'tools' | 'consumables' | 'fluids' | 'parts'>;

export const frontCoverMaterials: Materials = {
  kit: [
    { id: 'gasket', name: 'Front cover gasket', quantity: 1 },
    { id: 'seal', name: 'Crankshaft seal', quantity: 1 },
    { id: 'pump-ring', name: 'Coolant pump sealing ring', quantity: 1 },
    { id: 'locking-plate', name: 'Locking plate', quantity: 2 },
    { id: 'sump-washer', name: 'Crush washer, 14 mm', quantity: 1 },
    { id: 'coolant-washer', name: 'Crush washer, 10 mm', quantity: 1 },
  ],
  tools: [
    { id: 'measuring-pan', name: 'Measuring pan, 10 L', special: false },
    { id: 'torque-small', name: 'Torque wrench, 5 to 25 N·m', special: false },
    { id: 'torque-large', name: 'Torque wrench, 40 to 200 N·m', special: false },
    { id: 'straight-edge', name: 'Straight edge and feeler gauges', special: false },
    { id: 'depth-gauge', name: 'Depth gauge', special: false },
    { id: 'pulley-holder', name: 'Crankshaft pulley holder', special: true },
    { id: 'seal-driver', name: 'Seal driver, 48 mm', special: true },
    { id: 'pressure-pump', name: 'Cooling system pressure pump', special: true },
  ],
  consumables: [
    { id: 'face-cleaner', name: 'Gasket face cleaner', kind: 'cleaner' },
    { id: 'joint-sealant', name: 'Joint sealant, oil resistant', kind: 'sealant' },
    { id: 'clean-oil', name: 'Clean engine oil', kind: 'oil' },
    { id: 'ring-grease', name: 'Rubber-safe grease', kind: 'grease' },
    {
      id: 'bolt-locker',
      name: 'Thread-locker, medium strength',
      kind: 'threadLocker',
      strength: 'medium',
    },
  ],
  fluids: [
    { id: 'coolant', name: 'Coolant', capacityL: 8.5, toleranceL: 0.4, mayReturn: true },
    { id: 'oil', name: 'Engine oil', capacityL: 3.8, toleranceL: 0.3, mayReturn: false },
  ],
  parts: [
    { id: 'earth-lead', name: 'Battery earth lead', starts: 'on', reuse: 'always' },
    { id: 'coolant-plug-washer', name: 'Coolant plug washer', starts: 'on', reuse: 'never' },
    { id: 'sump-plug-washer', name: 'Sump plug washer', starts: 'on', reuse: 'never' },
    { id: 'drive-belt', name: 'Drive belt', starts: 'on', reuse: 'always' },
    { id: 'tensioner', name: 'Belt tensioner', starts: 'on', reuse: 'always' },
    { id: 'tensioner-plate', name: 'Tensioner locking plate', starts: 'on', reuse: 'never' },
    { id: 'crank-pulley', name: 'Crankshaft pulley', starts: 'on', reuse: 'always' },
    { id: 'crank-plate', name: 'Crankshaft locking plate', starts: 'on', reuse: 'never' },
    { id: 'coolant-pump', name: 'Coolant pump', starts: 'on', reuse: 'always' },
    { id: 'pump-seal', name: 'Pump sealing ring', starts: 'on', reuse: 'never' },
    { id: 'front-cover', name: 'Front cover', starts: 'on', reuse: 'always' },
    { id: 'cover-gasket', name: 'Cover gasket', starts: 'on', reuse: 'ask' },
    { id: 'shaft-seal', name: 'Crankshaft seal', starts: 'on', reuse: 'never' },
  ],
};
