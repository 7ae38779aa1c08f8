import type { HeardBefore, Input, JobEvent, JobState } from '../job';
import type { Role } from '../people';
import { changesOf } from './changes';
import { kinds, type Kind } from './kind';
import type { Words } from './entry-words';
import { wordsOf } from './words';

/** One event of a job in plain words. `actor`, `whom`, `bay`, `tool` are ids: names are for whoever shows it. */
export interface Row extends Omit<Words, 'details'> {
  readonly seq: number;
  readonly id: string;
  readonly at: string;
  readonly actor: string;
  readonly role: Role;
  /** Where the job was then. */
  readonly bay: string;
  readonly details: readonly string[];
  /** What was heard. */
  readonly heard?: Extract<Input, { by: 'voice' }>;
  /** What was heard since the event before, and made none. */
  readonly heardBefore: readonly HeardBefore[];
}

/** The row of an event between the states before and after it; an opening has nothing before it. */
export const rowOf = (before: JobState | undefined, after: JobState, event: JobEvent): Row => {
  const earlier = before ?? after;
  const words = wordsOf(earlier, after, event);
  const changes = changesOf(earlier, after, words.step);
  const heard = event.input.by === 'voice' ? event.input : undefined;
  const heardBefore = event.heardBefore ?? [];
  const all = new Set<Kind>([
    ...words.kinds,
    ...changes.map(({ kind }) => kind),
    ...(heard === undefined && heardBefore.length === 0 ? [] : (['heard'] as const)),
  ]);
  return {
    ...words,
    seq: event.seq,
    id: event.id,
    at: event.at,
    actor: event.actor,
    role: event.role,
    bay: after.bay,
    kinds: kinds.filter((kind) => all.has(kind)),
    details: [...(words.details ?? []), ...changes.map(({ text }) => text)],
    ...(heard === undefined ? {} : { heard }),
    heardBefore,
  };
};
