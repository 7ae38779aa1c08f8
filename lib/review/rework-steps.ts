import { quantile } from '../statistics';
import type { Followed } from './sections';

/** One reopening of a step. */
export interface Reopening {
  readonly procedure: string;
  readonly step: string;
  readonly job: string;
  readonly followed: Followed;
  /** How long the step took again. */
  readonly minutes?: number;
}

export interface StepReopenings {
  readonly procedure: string;
  readonly step: string;
  readonly times: number;
  readonly jobs: number;
  readonly followed: Readonly<Record<Followed, number>>;
  readonly medianMinutes?: number;
}

const summed = (all: readonly [Reopening, ...Reopening[]]): StepReopenings => {
  const [{ procedure, step }] = all;
  const followed: Record<Followed, number> = {
    doneAgain: 0,
    leftOut: 0,
    reopenedAgain: 0,
    stillOpen: 0,
  };
  for (const one of all) followed[one.followed] += 1;
  const median = quantile(
    all.flatMap(({ minutes }) => (minutes === undefined ? [] : [minutes])),
    0.5,
  );
  return {
    procedure,
    step,
    times: all.length,
    jobs: new Set(all.map(({ job }) => job)).size,
    followed,
    ...(median.ok ? { medianMinutes: median.value } : {}),
  };
};

/** Reopenings by step, over all revisions of its procedure; the most frequent first. */
export const reworkSteps = (reopenings: readonly Reopening[]): readonly StepReopenings[] => {
  const groups = new Map<string, [Reopening, ...Reopening[]]>();
  for (const one of reopenings) {
    const key = `${one.procedure} ${one.step}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [one]);
    else group.push(one);
  }
  return [...groups.values()]
    .map(summed)
    .sort((a, b) => b.times - a.times || (a.step < b.step ? -1 : 1));
};
