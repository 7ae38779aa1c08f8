import type { Verification } from '../store';

const count = (number: number, one: string, many: string): string =>
  `${number} ${number === 1 ? one : many}`;

/** What a look at the whole record found, for whoever looks after the shop's data. */
export const reportLines = ({
  jobs,
  events,
  anchors,
  lastAnchor,
  faults,
}: Verification): readonly string[] => [
  `${count(events, 'event', 'events')} of ${count(jobs, 'job', 'jobs')} and ` +
    `${count(anchors, 'daily anchor', 'daily anchors')}: ` +
    (faults.length === 0 ? 'all of it holds' : count(faults.length, 'fault', 'faults')),
  ...(lastAnchor === undefined
    ? []
    : [`Anchor of ${lastAnchor.day}, to be kept elsewhere: ${lastAnchor.hash}`]),
];
