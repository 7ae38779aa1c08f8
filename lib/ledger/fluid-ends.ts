import { lookup } from '../job/record';
import type { FluidState, JobState } from '../job/state';
import type { Fluid } from '../procedure';
import { stepFor, wasDone } from './find-step';
import type { LooseEnd } from './loose-end';
import { withUnit } from './words';

const litres = (value: number): string => withUnit(value, 'L');

const beyond = (a: number, b: number, allowed: number): boolean => Math.abs(a - b) > allowed + 1e-9; // decimals: a limit reached is kept

const imbalance = (fluid: Fluid, { drainedL, filledL }: FluidState): string | undefined => {
  if (filledL === undefined) return 'The volume filled was not read';
  const allowed = `${litres(fluid.toleranceL)} allowed`;
  const says = [
    ...(drainedL === undefined
      ? ['The volume drained was not read']
      : beyond(filledL, drainedL, fluid.toleranceL)
        ? [`Filled ${litres(filledL)}, drained ${litres(drainedL)}: ${allowed} between them`]
        : []),
    ...(beyond(filledL, fluid.capacityL, fluid.toleranceL)
      ? [`Filled ${litres(filledL)}, capacity ${litres(fluid.capacityL)}: ${allowed} between them`]
      : []),
  ];
  return says.length === 0 ? undefined : says.join('. ');
};

/** Fluids that are out; and of those drained and filled again, the ones whose volumes do not balance. */
export const fluidEnds = (state: JobState): readonly LooseEnd[] =>
  state.revision.fluids.flatMap((fluid): LooseEnd[] => {
    const now = lookup(state.fluids, fluid.id);
    if (now === undefined) return [];
    const step = stepFor(state, (e) => e.kind === 'fills' && e.fluid === fluid.id);
    if (now.state === 'out')
      return [
        {
          kind: 'fluidOut',
          key: `fluidOut:${fluid.id}`,
          mark: `out ${now.drainedL ?? 'unread'}`,
          text: `${fluid.name} is out`,
          detail: `${now.drainedL === undefined ? '' : `Drained ${litres(now.drainedL)}, `}capacity ${litres(fluid.capacityL)}`,
          ...step,
        },
      ];
    const drained = wasDone(state, (e) => e.kind === 'drains' && e.fluid === fluid.id);
    const detail = now.state === 'refilled' && drained ? imbalance(fluid, now) : undefined;
    if (detail === undefined) return [];
    return [
      {
        kind: 'fluidUnbalanced',
        key: `fluidUnbalanced:${fluid.id}`,
        mark: `drained ${now.drainedL ?? 'unread'} filled ${now.filledL ?? 'unread'}`,
        text: `${fluid.name} does not balance`,
        detail,
        ...(now.drainedL === undefined
          ? stepFor(state, (e) => e.kind === 'drains' && e.fluid === fluid.id)
          : step),
      },
    ];
  });
