import {
  applyEvent,
  writeEvent,
  type Happening,
  type JobEvent,
  type JobState,
  type Reason,
} from '@/lib/job';
import { unsigned, type LooseEnd } from '@/lib/ledger';
import { err, ok, type Result } from '@/lib/result';
import { deviationOf } from '../kiosk/foreman-acts';
import type { ForemanSignedOn } from './foreman-link';

/** One thing that a foreman may do with a job; those that need a reason are asked for it. */
export interface ForemanAct {
  readonly key: string;
  readonly label: string;
  /** What stands above the question why. */
  readonly title: string;
  readonly usual: readonly string[];
  readonly make: (reason: Reason) => Happening;
}

const holdReasons = ['Waiting for parts', 'Waiting for approval', 'Vehicle needed elsewhere'];
const acceptReasons = ['Seen, in order', 'Within the sheet’s limits', 'Maker’s bulletin allows it'];
const reworkReasons = ['Not as the sheet has it', 'Take the reading again', 'Fit a new part'];
const moveReasons = ['Bay is needed', 'End of shift', 'Lift is out of order'];

const decisions = [
  ['accepted', 'Accept', acceptReasons],
  ['acceptedRecheckDue', 'Accept, re-check due', acceptReasons],
  ['rework', 'Send back to rework', reworkReasons],
] as const;

/** What may be said of one loose end: a word on a deviation, or a signature. */
export const actsFor = (end: LooseEnd): readonly ForemanAct[] =>
  end.kind === 'deviationUndecided' && end.mark === 'undecided'
    ? decisions.map(([decision, label, usual]) => ({
        key: decision,
        label,
        title: `${label}: ${end.text}`,
        usual,
        make: (reason) => ({
          type: 'deviationDecided',
          deviation: deviationOf(end),
          decision,
          reason,
        }),
      }))
    : [
        {
          key: 'sign',
          label: 'Sign for it',
          title: `Sign for: ${end.text}`,
          usual: acceptReasons,
          make: (reason) => ({
            type: 'looseEndSigned',
            looseEnd: end.key,
            mark: end.mark,
            reason,
          }),
        },
      ];

export const holdAct: ForemanAct = {
  key: 'hold',
  label: 'Hold the job',
  title: 'Hold the job: why?',
  usual: holdReasons,
  make: (reason) => ({ type: 'jobHeld', reason }),
};

export const moveAct = (bay: string, mechanic: string | undefined): ForemanAct => ({
  key: 'move',
  label: 'Move the job',
  title: 'Move the job: why?',
  usual: moveReasons,
  make: (reason) => ({
    type: 'jobReassigned',
    bay,
    ...(mechanic === undefined ? {} : { mechanic }),
    reason,
  }),
});

/** What still needs a word or may need a signature, deviations first; steps still to do are work, not loose ends here. */
export const endsToAnswer = (job: JobState): readonly LooseEnd[] => {
  const ends = unsigned(job).filter(({ kind }) => kind !== 'stepOpen');
  const undecided = ends.filter(({ kind }) => kind === 'deviationUndecided');
  return [...undecided, ...ends.filter((end) => !undecided.includes(end))];
};

/** The event of an act on the job as it is shown, or why the rules refuse it. */
export const foremanEvent = (
  job: JobState,
  { person, device }: ForemanSignedOn,
  happening: Happening,
  { now, newId }: { readonly now: string; readonly newId: () => string },
): Result<{ readonly event: JobEvent; readonly job: JobState }, string> => {
  const writing = {
    now,
    newId,
    actor: person.id,
    role: person.role,
    device,
    input: { by: 'touch' as const },
  };
  const event = writeEvent(job, happening, writing);
  const after = applyEvent(job, event);
  return after.ok ? ok({ event, job: after.value }) : err(after.error.message);
};
