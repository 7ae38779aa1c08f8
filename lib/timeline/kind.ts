/** What an event can be looked for by; one event may be of several kinds. */
export const kinds = [
  'steps',
  'readings',
  'parts',
  'fluids',
  'deviations',
  'heard',
  'holds',
  'signatures',
] as const;
export type Kind = (typeof kinds)[number];

export const kindNames: Readonly<Record<Kind, string>> = {
  steps: 'Steps',
  readings: 'Readings and checks',
  parts: 'Parts and fasteners',
  fluids: 'Fluids',
  deviations: 'Deviations',
  heard: 'Heard',
  holds: 'Holds and calls',
  signatures: 'Signatures',
};
