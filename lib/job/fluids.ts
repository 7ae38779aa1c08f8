import { askOf, stepOf, type Revision } from '../procedure';
import type { FluidState, JobState, Reading } from './state';

const volumeOf = (
  revision: Revision,
  readings: readonly Reading[],
  fluid: string,
  use: 'drained' | 'filled',
): number | undefined => {
  const counted = readings.filter((reading) => {
    if (reading.status !== 'counted') return false;
    const step = stepOf(revision, reading.step);
    const ask = step && askOf(step, reading.ask);
    return (
      ask?.kind === 'value' &&
      ask.of.kind === 'fluid' &&
      ask.of.fluid === fluid &&
      ask.of.use === use
    );
  });
  return counted.length === 0
    ? undefined
    : counted.reduce((litres, reading) => litres + reading.canonical, 0);
};

/** The volumes of every fluid, summed afresh from the readings that count. */
export const withVolumes = (state: JobState): JobState => {
  const entries = Object.entries(state.fluids).map(([id, fluid]): [string, FluidState] => {
    const drainedL = volumeOf(state.revision, state.readings, id, 'drained');
    const filledL = volumeOf(state.revision, state.readings, id, 'filled');
    return [
      id,
      {
        state: fluid.state,
        ...(drainedL === undefined ? {} : { drainedL }),
        ...(filledL === undefined ? {} : { filledL }),
      },
    ];
  });
  return { ...state, fluids: Object.fromEntries(entries) };
};
