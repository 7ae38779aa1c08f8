import { writeEvents, type Happening, type JobEvent, type JobState } from '@/lib/job';
import type { LooseEnd } from '@/lib/ledger';
import type { Person } from '@/lib/people';
import { err, type Result } from '@/lib/result';

/** What a foreman says of one loose end. */
export type Word = 'sign' | 'accepted' | 'acceptedRecheckDue' | 'rework';

export interface Decision {
  readonly end: LooseEnd;
  readonly word: Word;
}

/** A deviation without a word on it is decided; everything else is signed for as it stands. */
export const wordsFor = (end: LooseEnd): readonly Word[] =>
  end.kind === 'deviationUndecided' && end.mark === 'undecided'
    ? ['accepted', 'acceptedRecheckDue', 'rework']
    : ['sign'];

export const deviationOf = (end: LooseEnd): string => end.key.slice('deviationUndecided:'.length);

/** Why this person may not decide here; none if they may. */
export const barredFrom = (job: JobState, person: Person): string | undefined => {
  if (person.role !== 'foreman') return 'no foreman';
  return job.workers.includes(person.id) ? 'worked on this job' : undefined;
};

const happeningOf = ({ end, word }: Decision, reason: string): Happening =>
  word === 'sign'
    ? { type: 'looseEndSigned', looseEnd: end.key, mark: end.mark, reason: { text: reason } }
    : {
        type: 'deviationDecided',
        deviation: deviationOf(end),
        decision: word,
        reason: { text: reason },
      };

export interface ForemanEnv {
  readonly now: string;
  readonly newId: () => string;
  readonly device: string;
}

/** The foreman's events on top of the job as it is shown, and the job after them; or why one of them may not be. */
export const foremanEvents = (
  job: JobState,
  foreman: Person,
  decisions: readonly Decision[],
  reason: string,
  env: ForemanEnv,
): Result<{ readonly events: readonly JobEvent[]; readonly job: JobState }, string> => {
  const happenings: readonly Happening[] = [
    ...(job.foremanCalledAt === undefined ? [] : [{ type: 'foremanAnswered' as const }]),
    ...decisions.map((decision) => happeningOf(decision, reason)),
  ];
  const written = writeEvents(job, happenings, {
    ...env,
    actor: foreman.id,
    role: foreman.role,
    input: { by: 'touch' },
  });
  return written.ok ? written : err(written.error.message);
};
