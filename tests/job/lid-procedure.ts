import type { Revision, Step } from '@/lib/procedure';

const step = (id: string, title: string, rest: Partial<Step>): Step => ({
  id,
  title,
  instruction: `${title}.`,
  cautions: [],
  shows: [],
  oneShot: false,
  handStart: false,
  powerTool: 'notUsed',
  after: [],
  bookMinutes: 5,
  effects: [],
  asks: [],
  ...rest,
});

const newtonMetres = (target: number) => ({
  kind: 'target' as const,
  unit: 'N.m' as const,
  target,
  tolerance: { in: 'percent' as const, plus: 10, minus: 10 },
});

const hole = (id: string, xMm: number) => ({ id, xMm, yMm: 0, diameterMm: 8 });

const bolt = (group: string, label: string, lengthMm: number, singleUse = false) => ({
  id: `${group}-${label}`,
  label,
  hole: `${group}-hole-${label}`,
  lengthMm,
  singleUse,
});

/** Three lid bolts, a hub bolt that is single-use with thread-locker, an idler nut, a kit lamp: every feature once. */
export const lidJob: Revision = {
  procedure: 'reseal-lid',
  revision: 1,
  title: 'Reseal the lid',
  summary: 'An invented job that uses every feature once.',
  publishedAt: '2026-01-05T08:00:00Z',
  appliesTo: 'Invented test rig',
  source: { sheet: 'Sheet 1', revision: 'A' },
  kit: [
    { id: 'new-seal', name: 'Seal', quantity: 1 },
    { id: 'new-gasket', name: 'Gasket', quantity: 1 },
    { id: 'new-hub-bolt', name: 'Hub bolt', quantity: 1 },
    { id: 'lamp-set', name: 'Lamp', quantity: 1 },
    { id: 'cable-tie', name: 'Cable tie', quantity: 4 },
  ],
  tools: [],
  consumables: [
    { id: 'locker', name: 'Thread-locker', kind: 'threadLocker', strength: 'medium' },
    { id: 'grease', name: 'Grease', kind: 'grease' },
  ],
  fluids: [{ id: 'oil', name: 'Oil', capacityL: 3, toleranceL: 0.2, mayReturn: false }],
  parts: [
    { id: 'lid', name: 'Lid', starts: 'on', reuse: 'always' },
    { id: 'gasket', name: 'Gasket', starts: 'on', reuse: 'ask' },
    { id: 'washer', name: 'Locking washer', starts: 'on', reuse: 'never' },
    { id: 'seal', name: 'Shaft seal', starts: 'on', reuse: 'never' },
    { id: 'lamp', name: 'Lamp', starts: 'off', reuse: 'always' },
  ],
  groups: [
    {
      id: 'lid-bolts',
      name: 'Lid bolts',
      noun: 'bolt',
      drawing: 'rig',
      thread: 'M6',
      strengthClass: '8.8',
      safetyCritical: false,
      fasteners: [bolt('lid', '1', 20), bolt('lid', '2', 25), bolt('lid', '3', 35)],
      passes: [
        { id: 'snug', stage: 'snug', tightening: { kind: 'torque', torque: newtonMetres(4) } },
        { id: 'final', stage: 'final', tightening: { kind: 'torque', torque: newtonMetres(10) } },
      ],
    },
    {
      id: 'hub-bolt',
      name: 'Hub bolt',
      noun: 'bolt',
      drawing: 'rig',
      thread: 'M12x1.25',
      strengthClass: '10.9',
      threadLocker: 'locker',
      safetyCritical: true,
      fasteners: [bolt('hub', '1', 60, true)],
      passes: [
        {
          id: 'final',
          stage: 'final',
          tightening: {
            kind: 'torqueAngle',
            snugTorque: newtonMetres(60),
            angle: { kind: 'range', unit: 'deg', lower: 85, upper: 95 },
          },
        },
      ],
    },
    {
      id: 'idler-nut',
      name: 'Idler nut',
      noun: 'nut',
      drawing: 'rig',
      thread: 'M8',
      strengthClass: '8',
      threadLocker: 'locker',
      safetyCritical: false,
      fasteners: [bolt('idler', '1', 12)],
      passes: [
        { id: 'final', stage: 'final', tightening: { kind: 'torque', torque: newtonMetres(25) } },
      ],
    },
    {
      id: 'lamp-screws',
      name: 'Lamp screws',
      noun: 'screw',
      drawing: 'rig',
      thread: 'M4',
      strengthClass: '4.8',
      safetyCritical: false,
      fasteners: [bolt('lamp', '1', 10), bolt('lamp', '2', 10)],
      passes: [{ id: 'final', stage: 'final', tightening: { kind: 'byFeel' } }],
    },
  ],
  drawings: [
    {
      id: 'rig',
      title: 'The rig',
      description:
        'Three holes of the lid in a row, one of the hub, one of the idler, two of the lamp.',
      widthMm: 200,
      heightMm: 50,
      shapes: [],
      marks: [],
      holes: [
        hole('lid-hole-1', 10),
        hole('lid-hole-2', 30),
        hole('lid-hole-3', 50),
        hole('hub-hole-1', 90),
        hole('idler-hole-1', 120),
        hole('lamp-hole-1', 150),
        hole('lamp-hole-2', 170),
      ],
    },
  ],
  steps: [
    step('drain', 'Drain the oil', {
      effects: [{ kind: 'drains', fluid: 'oil' }],
      asks: [
        {
          kind: 'value',
          id: 'drained',
          label: 'Oil drained',
          of: {
            kind: 'fluid',
            fluid: 'oil',
            use: 'drained',
            spec: { kind: 'noFigure', unit: 'L' },
          },
        },
      ],
    }),
    step('open-lid', 'Take off the lid', {
      after: ['drain'],
      effects: [
        { kind: 'takesOff', parts: ['lid', 'gasket', 'washer'], groups: ['lid-bolts'], tray: 'A' },
      ],
      asks: [{ kind: 'count', id: 'laid', label: 'Bolts laid out', expected: 3 }],
    }),
    step('open-hub', 'Take out the hub bolt', {
      after: ['open-lid'],
      effects: [
        { kind: 'takesOff', parts: ['seal'], groups: ['hub-bolt'], tray: 'Tray B' },
        { kind: 'loosens', groups: ['idler-nut'] },
      ],
    }),
    step('press-seal', 'Press in the seal', {
      oneShot: true,
      after: ['open-hub'],
      effects: [
        { kind: 'applies', consumable: 'grease', groups: [], parts: ['seal'] },
        {
          kind: 'fits',
          part: 'seal',
          as: 'new',
          uses: [{ kitItem: 'new-seal', quantity: 1 }],
        },
      ],
      asks: [
        {
          kind: 'check',
          id: 'square',
          label: 'Seal sits square',
          passesWhen: 'It is flush all round',
        },
      ],
    }),
    step('close-lid', 'Put on the lid', {
      handStart: true,
      after: ['press-seal'],
      effects: [
        {
          kind: 'fits',
          part: 'gasket',
          as: 'asChosen',
          uses: [{ kitItem: 'new-gasket', quantity: 1 }],
        },
        { kind: 'fits', part: 'washer', as: 'asChosen', uses: [] },
        { kind: 'fits', part: 'lid', as: 'reused', uses: [] },
        { kind: 'runsIn', groups: ['lid-bolts'], fasteners: 'same', uses: [] },
      ],
      asks: [
        { kind: 'choice', id: 'which-gasket', label: 'Gasket: reused or replaced', part: 'gasket' },
        { kind: 'choice', id: 'which-washer', label: 'Washer: reused or replaced', part: 'washer' },
      ],
    }),
    step('snug-lid', 'Snug the lid bolts', {
      after: ['close-lid'],
      effects: [{ kind: 'tightens', group: 'lid-bolts', pass: 'snug' }],
    }),
    step('tighten-lid', 'Tighten the lid bolts', {
      after: ['snug-lid'],
      effects: [{ kind: 'tightens', group: 'lid-bolts', pass: 'final' }],
      asks: [
        {
          kind: 'value',
          id: 'lid-torque',
          label: 'Lid bolt torque',
          of: { kind: 'pass', group: 'lid-bolts', pass: 'final', measure: 'torque', each: true },
        },
      ],
    }),
    step('close-hub', 'Run in the hub bolt', {
      after: ['press-seal'],
      effects: [
        { kind: 'applies', consumable: 'locker', groups: ['hub-bolt', 'idler-nut'], parts: [] },
        {
          kind: 'runsIn',
          groups: ['hub-bolt'],
          fasteners: 'new',
          uses: [{ kitItem: 'new-hub-bolt', quantity: 1 }],
        },
      ],
    }),
    step('tighten-hub', 'Tighten the hub bolt and the idler nut', {
      after: ['close-hub'],
      effects: [
        { kind: 'tightens', group: 'hub-bolt', pass: 'final' },
        { kind: 'tightens', group: 'idler-nut', pass: 'final' },
      ],
      asks: [
        {
          kind: 'value',
          id: 'hub-torque',
          label: 'Hub bolt torque',
          of: { kind: 'pass', group: 'hub-bolt', pass: 'final', measure: 'torque', each: false },
        },
        {
          kind: 'value',
          id: 'hub-angle',
          label: 'Hub bolt angle',
          of: { kind: 'pass', group: 'hub-bolt', pass: 'final', measure: 'angle', each: false },
        },
        {
          kind: 'value',
          id: 'idler-torque',
          label: 'Idler nut torque',
          of: { kind: 'pass', group: 'idler-nut', pass: 'final', measure: 'torque', each: false },
        },
      ],
    }),
    step('fill', 'Fill the oil', {
      after: ['tighten-lid'],
      effects: [{ kind: 'fills', fluid: 'oil' }],
      asks: [
        {
          kind: 'value',
          id: 'filled',
          label: 'Oil filled',
          of: {
            kind: 'fluid',
            fluid: 'oil',
            use: 'filled',
            spec: { kind: 'range', unit: 'L', lower: 2.8, upper: 3.2 },
          },
        },
      ],
    }),
    step('lamp', 'Fit the lamp', {
      effects: [
        { kind: 'fits', part: 'lamp', as: 'new', uses: [{ kitItem: 'lamp-set', quantity: 1 }] },
        {
          kind: 'runsIn',
          groups: ['lamp-screws'],
          fasteners: 'new',
          uses: [{ kitItem: 'cable-tie', quantity: 2 }],
        },
        { kind: 'tightens', group: 'lamp-screws', pass: 'final' },
      ],
      asks: [
        {
          kind: 'value',
          id: 'supply',
          label: 'Voltage at the lamp',
          of: { kind: 'other', spec: { kind: 'atLeast', unit: 'V', lower: 11.5 } },
        },
      ],
    }),
    step('run', 'Run it and look for leaks', {
      after: ['fill', 'tighten-hub'],
      asks: [{ kind: 'check', id: 'dry', label: 'No leak', passesWhen: 'Dry after two minutes' }],
    }),
  ],
};

/** Three steps without a fixed order between the first two; one bolt, one part, nothing else. */
export const hatchJob: Revision = {
  ...lidJob,
  procedure: 'hatch',
  title: 'Look behind the hatch',
  kit: [],
  consumables: [],
  fluids: [],
  parts: [{ id: 'hatch', name: 'Hatch', starts: 'on', reuse: 'always' }],
  groups: [
    {
      id: 'hatch-bolts',
      name: 'Hatch',
      noun: 'bolt',
      drawing: 'rig',
      thread: 'M6',
      strengthClass: '8.8',
      safetyCritical: false,
      fasteners: [bolt('lid', '1', 20), bolt('lid', '2', 20)],
      passes: [
        { id: 'final', stage: 'final', tightening: { kind: 'torque', torque: newtonMetres(10) } },
      ],
    },
  ],
  steps: [
    step('look', 'Look for damage', {
      asks: [{ kind: 'check', id: 'sound', label: 'No damage', passesWhen: 'Nothing is bent' }],
    }),
    step('open', 'Take off the hatch', {
      effects: [{ kind: 'takesOff', parts: ['hatch'], groups: ['hatch-bolts'] }],
    }),
    step('close', 'Put on the hatch', {
      after: ['open'],
      effects: [
        { kind: 'fits', part: 'hatch', as: 'reused', uses: [] },
        { kind: 'runsIn', groups: ['hatch-bolts'], fasteners: 'same', uses: [] },
        { kind: 'tightens', group: 'hatch-bolts', pass: 'final' },
      ],
      asks: [
        {
          kind: 'value',
          id: 'torque',
          label: 'Hatch bolt torque',
          of: { kind: 'pass', group: 'hatch-bolts', pass: 'final', measure: 'torque', each: false },
        },
      ],
    }),
  ],
};
