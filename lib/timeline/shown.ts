import type { JobState } from '../job';
import { reasonWords } from '../ledger/words';
import type { Verdict } from '../metrology/verdict';
import { stepNumber, stepOf } from '../procedure';
import { heardBeforeWords, surenessWords } from './heard-words';
import type { Moment } from './moment';
import type { Row } from './row';
import type { Times } from './times';

/** An event as it is shown: no ids of people, and the sound only for whoever may hear it. */
export interface ShownRow {
  readonly seq: number;
  readonly clock: string;
  readonly day: string;
  readonly who: string;
  readonly bay: string;
  readonly step?: string;
  readonly what: string;
  readonly details: readonly string[];
  readonly reason?: string;
  readonly clip?: string;
  readonly verdict?: Verdict;
  /** What became of it since: taken back, replaced. */
  readonly since?: string;
  readonly heard?: { readonly said: string; readonly how: string };
  /** What was said before it and made no event, a line each. */
  readonly heardBefore: readonly string[];
}

/** How a job stood right after an event, with that event. */
export interface ShownMoment {
  readonly row: ShownRow;
  readonly moment: Moment;
}

export interface RowNames {
  readonly person: (id: string) => string;
  readonly bay: (id: string) => string;
  readonly tool: (id: string) => string;
  /** Whether the sound of a spoken reason may be heard. */
  readonly sounds: boolean;
  /** When a sound was deleted, as the shop has set; absent: it is there. */
  readonly soundDeletedAt: (clip: string) => string | undefined;
  readonly times: Times;
}

const sinceWords = {
  provisional: 'counts once its step is done',
  counted: undefined,
  withdrawn: 'was taken back',
  superseded: 'does not count any more',
} as const;

/** A row for the screen. `last`: the job as it stands now, which tells what became of the entry. */
export const shownRow = (row: Row, last: JobState, names: RowNames): ShownRow => {
  const step = row.step === undefined ? undefined : stepOf(last.revision, row.step);
  const reading = last.readings.find(({ id }) => id === row.id);
  const answer = last.answers.find(({ id }) => id === row.id);
  const status = (reading ?? answer)?.status;
  const since = status === undefined ? undefined : sinceWords[status];
  const sound = names.sounds ? row.reason?.clip : undefined;
  const deletedAt = sound === undefined ? undefined : names.soundDeletedAt(sound);
  const clip = deletedAt === undefined ? sound : undefined;
  const reason = reasonWords(row.reason);
  return {
    seq: row.seq,
    clock: names.times.clock(row.at),
    day: names.times.day(row.at),
    who: names.person(row.actor),
    bay: names.bay(row.bay),
    what: row.whom === undefined ? row.what : `${row.what} ${names.person(row.whom)}`,
    details: [
      ...(row.tool === undefined ? [] : [`With ${names.tool(row.tool)}`]),
      ...row.details,
      ...(deletedAt === undefined
        ? []
        : [`The sound was deleted on ${names.times.day(deletedAt)}, as the shop has set`]),
    ],
    ...(step === undefined ? {} : { step: `${stepNumber(last.revision, step.id)} ${step.title}` }),
    ...(reason === undefined ? {} : { reason }),
    ...(clip === undefined ? {} : { clip }),
    ...(reading === undefined ? {} : { verdict: reading.verdict }),
    ...(since === undefined ? {} : { since }),
    heardBefore: row.heardBefore.map(heardBeforeWords),
    ...(row.heard === undefined
      ? {}
      : { heard: { said: row.heard.said, how: surenessWords(row.heard) } }),
  };
};
