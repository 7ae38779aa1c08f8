import type { ClockReport } from './clocks';
import type { FuzzReport } from './fuzz';
import type { KillReport } from './kills';
import type { Written } from './kiosks';
import type { Looked } from './look';
import type { NetworkReport } from './networks';

/** What to print of one kind of fault, and whether nothing was lost or broken by it. */
export interface Told {
  readonly lines: readonly string[];
  readonly good: boolean;
}

const row = (name: string, value: string | number): string => `  ${name.padEnd(34)} ${value}`;

/** Every acknowledged event is there as it was sent, and no other is. */
const whole = (seen: Looked & Written): boolean =>
  seen.lost === 0 && seen.faults.length === 0 && seen.acknowledged > 0;

const stored = (seen: Looked & Written): readonly string[] => [
  row('events acknowledged', seen.acknowledged),
  row('sent again by the kiosks', seen.again),
  row('acknowledged and lost', seen.lost),
  row('daily anchors', seen.anchors),
  ...(seen.faults.length === 0 ? [row('chains and anchors', 'all hold')] : seen.faults),
];

export const killLines = (seen: KillReport): Told => ({
  lines: [
    `kill -9 of the server at a random moment of ${seen.writesEach} writes`,
    row('rounds', seen.rounds),
    ...stored(seen),
  ],
  good: whole(seen) && seen.acknowledged === seen.rounds * seen.writesEach,
});

export const networkLines = (seen: NetworkReport): Told => ({
  lines: [
    'A network that loses, delays, doubles and reorders',
    row('passed as they should', seen.ills.through),
    row('request lost, answer lost', `${seen.ills.lostThere}, ${seen.ills.lostBack}`),
    row(
      'late, twice, again long after',
      `${seen.ills.late}, ${seen.ills.twice}, ${seen.ills.againLater}`,
    ),
    ...stored(seen),
  ],
  good: whole(seen),
});

export const clockLines = (seen: ClockReport): Told => ({
  lines: [
    'A clock of the server that jumps by up to two days, ahead and back',
    row('jumps', seen.jumps),
    row('signed on again', seen.signedOn),
    ...stored(seen),
  ],
  good: whole(seen),
});

export const fuzzLines = (seen: FuzzReport): Told => ({
  lines: [
    'Requests made from the schemas, most of them with one thing wrong',
    row('requests', seen.requests),
    row(
      'answers by status',
      Object.entries(seen.answers)
        .map(([status, count]) => `${status}: ${count}`)
        .join(', '),
    ),
    row('answered with 5xx', seen.failed),
    row('without an answer in 30 s', seen.hung),
    row('events good after all, and taken', seen.taken),
    row('events changed otherwise', seen.changed),
    row('people, PINs, bays, tools, sheets', seen.fixedChanged ? 'CHANGED' : 'as they were'),
    ...seen.faults,
    ...seen.examples,
  ],
  good:
    seen.failed === 0 &&
    seen.hung === 0 &&
    seen.changed === 0 &&
    !seen.fixedChanged &&
    seen.faults.length === 0,
});
