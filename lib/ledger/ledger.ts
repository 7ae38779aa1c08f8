import type { JobState } from '../job/state';
import { fastenerEnds } from './fastener-ends';
import { fluidEnds } from './fluid-ends';
import { looseEndKinds, type LooseEnd } from './loose-end';
import { kitEnds, partEnds } from './part-ends';
import { readingEnds } from './reading-ends';
import { checkEnds, deviationEnds, openSteps } from './step-ends';

/** Everything that is not settled on a job, by kind and then in the order of the sheet; signed ones included. */
export const looseEnds = (state: JobState): readonly LooseEnd[] => {
  const all = [
    ...fluidEnds(state),
    ...partEnds(state),
    ...kitEnds(state),
    ...fastenerEnds(state),
    ...readingEnds(state),
    ...checkEnds(state),
    ...deviationEnds(state),
    ...openSteps(state),
  ];
  const signedBy = (end: LooseEnd): string | undefined =>
    state.signatures.find(({ looseEnd, mark }) => looseEnd === end.key && mark === end.mark)?.by;
  return looseEndKinds
    .flatMap((kind) => all.filter((end) => end.kind === kind))
    .map((end) => {
      const by = signedBy(end);
      return by === undefined ? end : { ...end, signedBy: by };
    });
};

/** The loose ends that no foreman answers for. */
export const unsigned = (state: JobState): readonly LooseEnd[] =>
  looseEnds(state).filter((end) => end.signedBy === undefined);

/** Whether the job may be closed: it runs, and every loose end is settled or signed. */
export const mayClose = (state: JobState): boolean =>
  state.phase === 'running' && unsigned(state).length === 0;
