import { lastWorker, spentMs, type JobState, type Reason } from '../job';
import { looseEndKinds, unsigned } from '../ledger';
import { stepNumber, stepOf } from '../procedure';
import type { Bay } from '../shop';
import type { BayCard, JobCard, Want } from './card';
import { finishOf, type StepTimes } from './finish';
import { lastTorque } from './last-torque';
import { offlineSinceMs, type Presence } from './presence';
import { jobWants, mostPressingFirst } from './wants';

/** All that a bay's card is made of. */
export interface BayFacts {
  readonly bay: Bay;
  readonly job: JobState | undefined;
  readonly presence: Presence | undefined;
  /** Since when kiosks are listened for. */
  readonly watchingSinceMs: number;
  readonly earlier: StepTimes;
  readonly nameOf: (person: string) => string;
  readonly nowMs: number;
}

const instant = (ms: number): string => new Date(ms).toISOString();

const reasonOf = (reason: Reason): { text: string; spoken: boolean } => ({
  text: reason.text ?? 'Spoken note',
  spoken: reason.clip !== undefined,
});

const endCounts = (state: JobState): JobCard['ends'] => {
  const ends = unsigned(state);
  return looseEndKinds
    .filter((kind) => kind !== 'stepOpen')
    .map((kind) => ({ kind, count: ends.filter((end) => end.kind === kind).length }))
    .filter(({ count }) => count > 0);
};

const stepOfJob = (state: JobState): JobCard['step'] => ({
  number: stepNumber(state.revision, state.currentStep),
  of: state.revision.steps.length,
  settled: Object.values(state.steps).filter(({ status }) => status !== 'open').length,
  title: stepOf(state.revision, state.currentStep)?.title ?? '',
});

const finish = (state: JobState, { earlier, nowMs }: BayFacts): JobCard['finish'] => {
  const forecast = finishOf(state, earlier, instant(nowMs));
  return forecast === undefined
    ? undefined
    : {
        typicalAt: instant(nowMs + forecast.typicalMinutes * 60_000),
        safeAt: instant(nowMs + forecast.safeMinutes * 60_000),
        from: forecast.from,
      };
};

const bookMs = ({ revision }: JobState): number =>
  revision.steps.reduce((sum, { bookMinutes }) => sum + bookMinutes * 60_000, 0);

const jobCard = (state: JobState, facts: BayFacts): JobCard => {
  const { hold, foremanAnswered: answered } = state;
  const since = state.clockSince;
  const torque = lastTorque(state);
  const done = finish(state, facts);
  return {
    id: state.job,
    seq: state.seq,
    plate: state.vehicle.plate,
    vehicle: state.vehicle.description,
    procedure: state.revision.title,
    phase: state.phase,
    step: stepOfJob(state),
    mechanic: facts.nameOf(lastWorker(state)),
    spentMs: state.revision.steps.reduce(
      (sum, { id }) => sum + spentMs(state, id, since ?? state.lastAt),
      0,
    ),
    ...(since === undefined ? {} : { runningSince: since }),
    bookMs: bookMs(state),
    ...(done === undefined ? {} : { finish: done }),
    ...(hold === undefined
      ? {}
      : {
          hold: { reason: reasonOf(hold.reason), since: hold.since, by: facts.nameOf(hold.by) },
        }),
    ends: endCounts(state),
    ...(torque === undefined ? {} : { lastTorque: torque }),
    ...(answered === undefined
      ? {}
      : { answered: { by: facts.nameOf(answered.by), at: answered.at } }),
    undecided: state.deviations.filter((one) => one.decision === undefined).map(({ kind }) => kind),
  };
};

const kioskWants = (
  job: JobState | undefined,
  kiosk: BayCard['kiosk'],
  presence: Presence | undefined,
): readonly Want[] => {
  if (job?.phase !== 'running') return [];
  if (kiosk.offlineSince !== undefined)
    return [{ kind: 'kioskOffline', since: kiosk.offlineSince, count: 1 }];
  return presence?.cannotBeHeard === undefined
    ? []
    : [{ kind: 'cannotBeHeard', since: instant(presence.cannotBeHeard.sinceMs), count: 1 }];
};

/** A bay as the wall shows it at one moment. A closed job has left its bay. */
export const bayCard = (facts: BayFacts): BayCard => {
  const { bay, presence, watchingSinceMs, nowMs } = facts;
  const job = facts.job?.phase === 'closed' ? undefined : facts.job;
  const offlineMs = offlineSinceMs(presence, watchingSinceMs, nowMs);
  const silent = offlineMs === undefined ? presence?.cannotBeHeard?.why : undefined;
  const kiosk = {
    ...(offlineMs === undefined ? {} : { offlineSince: instant(offlineMs) }),
    ...(silent === undefined ? {} : { cannotBeHeard: silent }),
  };
  return {
    bay: { id: bay.id, name: bay.name },
    ...(job === undefined ? {} : { job: jobCard(job, facts) }),
    kiosk,
    wants: mostPressingFirst([
      ...(job === undefined ? [] : jobWants(job)),
      ...kioskWants(job, kiosk, presence),
    ]),
  };
};
