import type { AppendMeasures, Pace } from './bench-appends';
import type { LargeMeasures } from './bench-large';
import { quantileText } from './bench-times';

const pace = (name: string, { perSecond, tookMs }: Pace, bare: Pace): string =>
  `  ${name.padEnd(31)} ${perSecond.toFixed(0).padStart(6)}/s  ` +
  `${(perSecond / bare.perSecond).toFixed(2)} × bare, ` +
  `p50 ${quantileText(tookMs, 0.5, 2)}, p99 ${quantileText(tookMs, 0.99, 2)} (n = ${tookMs.length})`;

/** The lines of `npm run bench -- appends`. */
export const appendsText = ({ bare, single, concurrent }: AppendMeasures): string =>
  [
    'Events stored, each acknowledged only once it is on disk (WAL, synchronous=FULL)',
    pace('a bare insert, synced', bare, bare),
    pace('one kiosk', single, bare),
    pace('50 kiosks at once', concurrent, bare),
    'Bare: the same text by one prepared statement into a table of two columns, on the same disk, in turns with the others.',
    'Kiosks: the job log of the server, without HTTP: rules, chain, lists and review are part of it. Each waits for its own',
    'answer before it writes again; what waits at the same moment shares one transaction and one sync.',
  ].join('\n');

const whole = (ms: number): string => `${ms.toFixed(ms < 10 ? 1 : 0)} ms`;

/** The lines of `npm run bench -- large`. */
export const largeText = (seen: LargeMeasures): string =>
  [
    `A job of ${seen.jobEvents} events, far more than any has`,
    `  read and checked                ${whole(seen.readMs)}`,
    `  replayed                        ${whole(seen.replayMs)}`,
    `  the next event stored           ${whole(seen.coldAppendMs)} when its state must be made first, ${whole(seen.warmAppendMs)} after that`,
    `${seen.storedEvents} events stored`,
    `  database opened                 ${whole(seen.openMs)}`,
    `  a kiosk's first page            ${whole(seen.firstBayMs)}, the next ${whole(seen.nextBayMs)}`,
    `  all open jobs, as for the wall  ${whole(seen.openJobsMs)}`,
  ].join('\n');
