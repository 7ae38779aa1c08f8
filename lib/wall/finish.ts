import { spentMs, type JobState } from '../job';
import { forecastFinish, paceOf, unknownPace, type FinishForecast, type Pace } from '../statistics';

/** Minutes that earlier jobs took for each step of a procedure, by step. */
export type StepTimes = Readonly<Record<string, readonly number[]>>;

const minuteMs = 60_000;
const minutes = (state: JobState, step: string, now: string): number =>
  spentMs(state, step, now) / minuteMs;

const paceSoFar = (state: JobState, now: string): Pace => {
  const done = state.revision.steps.flatMap(({ id, bookMinutes }) => {
    const took = minutes(state, id, now);
    return state.steps[id]?.status === 'done' && took > 0 ? [{ minutes: took, bookMinutes }] : [];
  });
  const pace = paceOf(done);
  return pace.ok && pace.value.typical > 0 ? pace.value : unknownPace;
};

/** When a running job is likely done, from what earlier jobs took and how this one goes; nothing while it stands. */
export const finishOf = (
  state: JobState,
  earlier: StepTimes,
  now: string,
): FinishForecast | undefined => {
  if (state.phase !== 'running') return undefined;
  const ahead = state.revision.steps
    .filter(({ id }) => state.steps[id]?.status === 'open')
    .map(({ id, bookMinutes }) => ({
      bookMinutes,
      history: Object.hasOwn(earlier, id) ? (earlier[id] ?? []) : [],
      spentMinutes: minutes(state, id, now),
    }));
  const forecast = forecastFinish(ahead, paceSoFar(state, now));
  return forecast.ok ? forecast.value : undefined;
};
