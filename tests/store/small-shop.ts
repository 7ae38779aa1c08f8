import type { Happening, JobEvent } from '@/lib/job';
import { revisionSchema } from '@/lib/procedure';
import { shopSchema } from '@/lib/shop';

/** A shop of two bays and two people, with one procedure of three plain steps. */
export const smallShop = shopSchema.parse({
  name: 'Test shop',
  bays: [
    { id: 'bay-1', name: 'Bay 1' },
    { id: 'bay-2', name: 'Bay 2' },
  ],
  people: [
    { id: 'ada', name: 'Ada', role: 'mechanic' },
    { id: 'finn', name: 'Finn', role: 'foreman' },
  ],
  torqueTools: [],
});

const step = (id: string) => ({
  id,
  title: id,
  instruction: `Do ${id}.`,
  cautions: [],
  shows: [],
  oneShot: false,
  handStart: false,
  powerTool: 'notUsed',
  after: [],
  bookMinutes: 1,
  effects: [],
  asks: [],
});

export const threeSteps = revisionSchema.parse({
  procedure: 'three-steps',
  revision: 1,
  title: 'Three steps',
  summary: 'Nothing is taken off.',
  publishedAt: '2025-01-02T08:00:00+00:00',
  appliesTo: 'any',
  source: { sheet: 'T-1', revision: 'A' },
  kit: [],
  tools: [],
  consumables: [],
  fluids: [],
  parts: [],
  groups: [],
  drawings: [],
  steps: [step('one'), step('two'), step('three')],
});

export const vehicle = { plate: 'TE 1', description: 'Test van' };
export const noon = new Date('2025-03-01T12:00:00Z');

export const jobId = (n: number): string =>
  `00000000-0000-4000-8000-${n.toString().padStart(12, '0')}`;

/** Event number `seq` of job `n`, by Ada; its id follows from both. */
export const event = (n: number, seq: number, happening: Happening): JobEvent => ({
  format: 1,
  id: `${n.toString().padStart(8, '0')}-0000-4000-9000-${seq.toString().padStart(12, '0')}`,
  job: jobId(n),
  seq,
  at: '2025-03-01T12:00:00+00:00',
  actor: 'ada',
  role: 'mechanic',
  device: 'kiosk-1',
  input: { by: 'touch' },
  happening,
});

export const opened = (n: number, bay = 'bay-1'): JobEvent =>
  event(n, 1, { type: 'jobOpened', procedure: 'three-steps', revision: 1, vehicle, bay });

export const held = (n: number, seq: number, text = 'parts'): JobEvent =>
  event(n, seq, { type: 'jobHeld', reason: { text } });

export const resumed = (n: number, seq: number): JobEvent => event(n, seq, { type: 'jobResumed' });
