import { openJob, type JobEvent } from '@/lib/job';
import type { JobState } from '@/lib/job/state';
import { openKiosk, type KioskEnv, type KioskState } from '@/lib/kiosk';
import { revisionSchema, type Revision } from '@/lib/procedure';

/** A cover with two bolts, a gasket, a seal with one try, and oil: every kind of ask in six steps. */
export const tinyCover: Revision = revisionSchema.parse({
  procedure: 'tiny-cover',
  revision: 1,
  title: 'Reseal the tiny cover',
  summary: 'Open, renew the gasket, close.',
  publishedAt: '2026-01-05T08:00:00Z',
  appliesTo: 'Test engine',
  source: { sheet: 'Sheet T-1', revision: 'A' },
  kit: [
    { id: 'gasket-kit', name: 'Gasket', quantity: 1 },
    { id: 'clip', name: 'Clip', quantity: 2 },
  ],
  tools: [],
  consumables: [],
  fluids: [{ id: 'oil', name: 'Oil', capacityL: 4, toleranceL: 0.3, mayReturn: false }],
  parts: [
    { id: 'cover', name: 'Cover', starts: 'on', reuse: 'always' },
    { id: 'gasket', name: 'Gasket', starts: 'on', reuse: 'ask' },
  ],
  groups: [
    {
      id: 'cover-bolts',
      name: 'Cover',
      noun: 'bolt',
      drawing: 'cover',
      thread: 'M6',
      strengthClass: '8.8',
      safetyCritical: false,
      fasteners: [
        { id: 'cover-1', label: '1', hole: 'h1', lengthMm: 25, singleUse: false },
        { id: 'cover-2', label: '2', hole: 'h2', lengthMm: 40, singleUse: false },
      ],
      passes: [
        {
          id: 'final',
          stage: 'final',
          tightening: {
            kind: 'torque',
            torque: {
              kind: 'target',
              unit: 'N.m',
              target: 10,
              tolerance: { in: 'unit', plus: 1, minus: 1 },
            },
          },
        },
      ],
    },
  ],
  drawings: [
    {
      id: 'cover',
      title: 'Cover',
      description: 'A small cover with two bolts',
      widthMm: 100,
      heightMm: 50,
      shapes: [],
      marks: [],
      holes: [
        { id: 'h1', xMm: 10, yMm: 25, diameterMm: 6 },
        { id: 'h2', xMm: 90, yMm: 25, diameterMm: 6 },
      ],
    },
  ],
  steps: [
    step('drain', 'Drain the oil', [], {
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
            spec: { kind: 'range', unit: 'L', lower: 3, upper: 4.2 },
          },
        },
      ],
    }),
    step('open', 'Take off the cover', ['drain'], {
      effects: [
        { kind: 'takesOff', parts: ['cover', 'gasket'], groups: ['cover-bolts'], tray: 'A' },
      ],
      asks: [{ kind: 'count', id: 'bolts', label: 'Bolts in tray A', expected: 2 }],
    }),
    step('gasket', 'Fit the gasket and cover', ['open'], {
      oneShot: true,
      effects: [
        {
          kind: 'fits',
          part: 'gasket',
          as: 'asChosen',
          uses: [{ kitItem: 'gasket-kit', quantity: 1 }],
        },
        { kind: 'fits', part: 'cover', as: 'reused', uses: [] },
        { kind: 'runsIn', groups: ['cover-bolts'], fasteners: 'same', uses: [] },
      ],
      asks: [
        { kind: 'choice', id: 'gasket-choice', label: 'Gasket', part: 'gasket' },
        { kind: 'check', id: 'seated', label: 'Cover seated', passesWhen: 'No gap all round' },
      ],
    }),
    step('tighten', 'Tighten the cover bolts', ['gasket'], {
      effects: [{ kind: 'tightens', group: 'cover-bolts', pass: 'final' }],
      asks: [
        {
          kind: 'value',
          id: 'torque',
          label: 'Torque',
          of: { kind: 'pass', group: 'cover-bolts', pass: 'final', measure: 'torque', each: true },
        },
      ],
    }),
    step('fill', 'Fill the oil', ['tighten'], {
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
            spec: { kind: 'range', unit: 'L', lower: 3.8, upper: 4.2 },
          },
        },
      ],
    }),
  ],
});

function step(
  id: string,
  instruction: string,
  after: string[],
  more: { oneShot?: boolean; effects: unknown[]; asks: unknown[] },
) {
  return {
    id,
    title: instruction,
    instruction,
    cautions: [],
    shows: [],
    oneShot: more.oneShot ?? false,
    handStart: false,
    powerTool: 'notUsed',
    after,
    bookMinutes: 5,
    effects: more.effects,
    asks: more.asks,
  };
}

let count = 0;
export const newId = (): string =>
  `00000000-0000-7000-8000-${String((count += 1)).padStart(12, '0')}`;

export const env: KioskEnv = {
  now: '2026-03-02T09:00:00Z',
  newId,
  actor: 'mira',
  role: 'mechanic',
  device: 'kiosk-1',
};

export const openedEvent: JobEvent = {
  format: 1,
  id: newId(),
  job: '00000000-0000-7000-8000-0000000000aa',
  seq: 1,
  at: '2026-03-02T08:55:00Z',
  actor: 'mira',
  role: 'mechanic',
  device: 'kiosk-1',
  input: { by: 'touch' },
  happening: {
    type: 'jobOpened',
    procedure: 'tiny-cover',
    revision: 1,
    vehicle: { plate: 'F-001', description: 'Test van' },
    bay: 'bay-1',
  },
};

export const opened = (): JobState => {
  const job = openJob(tinyCover, openedEvent);
  if (!job.ok) throw new Error(job.error.message);
  return job.value;
};

export const freshKiosk = (): KioskState => openKiosk(opened());
