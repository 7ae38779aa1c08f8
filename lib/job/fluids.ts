import { capacityFor, type FluidError } from '../fluids';
import { askOf, stepOf, type Fluid, type Revision, type ValueAsk } from '../procedure';
import type { Result } from '../result';
import { stands } from './asks';
import { lookup } from './record';
import type { FluidState, JobState, Reading } from './state';

type FluidUse = Extract<ValueAsk['of'], { kind: 'fluid' }>['use'];

/** The litres of those readings that are of one use of a fluid; undefined where there are none. */
const volumeOf = (
  revision: Revision,
  readings: readonly Reading[],
  fluid: string,
  use: FluidUse,
): number | undefined => {
  const found = readings.filter((reading) => {
    const step = stepOf(revision, reading.step);
    const ask = step && askOf(step, reading.ask);
    return (
      ask?.kind === 'value' &&
      ask.of.kind === 'fluid' &&
      ask.of.fluid === fluid &&
      ask.of.use === use
    );
  });
  return found.length === 0
    ? undefined
    : found.reduce((litres, reading) => litres + reading.canonical, 0);
};

/** What was read of a fluid so far, also in a step that is not done yet, litres. */
export const readSoFarL = (job: JobState, fluid: string, use: FluidUse): number | undefined =>
  volumeOf(job.revision, job.readings.filter(stands), fluid, use);

const field = {
  drained: 'drainedL',
  spilled: 'spilledL',
  returned: 'returnedL',
  filled: 'filledL',
} as const;
const uses = ['drained', 'spilled', 'returned', 'filled'] as const satisfies readonly FluidUse[];

/** The volumes of every fluid, summed afresh from the readings that count. */
export const withVolumes = (state: JobState): JobState => {
  const counted = state.readings.filter(({ status }) => status === 'counted');
  const entries = Object.entries(state.fluids).map(([id, { state: now }]): [string, FluidState] => {
    const volumes = uses.flatMap((use) => {
      const litres = volumeOf(state.revision, counted, id, use);
      return litres === undefined ? [] : [[field[use], litres] as const];
    });
    return [id, { state: now, ...Object.fromEntries(volumes) }];
  });
  return { ...state, fluids: Object.fromEntries(entries) };
};

/** What a fluid takes on this job, litres: less where it may while its filter stays and no new one was fitted. */
export const capacityL = (state: JobState, fluid: Fluid): Result<number, FluidError> =>
  capacityFor(
    {
      withFilterL: fluid.capacityL,
      ...(fluid.filter === undefined ? {} : { withoutFilterL: fluid.filter.capacityWithoutL }),
    },
    fluid.filter === undefined || lookup(state.parts, fluid.filter.part)?.fitted === 'new',
  );
