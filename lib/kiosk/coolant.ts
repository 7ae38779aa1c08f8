import { partsFor } from '../fluids';
import { capacityL, readSoFarL } from '../job';
import type { JobState } from '../job/state';
import { fluidOf, type Step } from '../procedure';
import { formatQuantity, roundDecimal } from '../quantity';

/** What to mix for a fill of coolant. */
export interface CoolantMix {
  readonly fluid: string;
  /** Volume fraction of concentrate, 0–1. */
  readonly strength: number;
  /** What is to be mixed: the capacity less what was poured back, litres. */
  readonly totalL: number;
  readonly concentrateL: number;
  readonly waterL: number;
  /** "Coolant 50 %: 4.25 L concentrate + 4.25 L water = 8.50 L" */
  readonly text: string;
}

/** No measuring jug of a workshop shows less than 0.05 L (common practice, no source). */
const litres = (value: number): string => formatQuantity(value, 'L', 2);

/**
 * The parts of concentrate and water for each coolant that a step fills at a wanted strength. What was poured back is
 * taken to have that strength; what is in the vehicle then is measured, not computed.
 */
export const coolantMixes = (job: JobState, step: Step): readonly CoolantMix[] =>
  step.effects.flatMap((effect): readonly CoolantMix[] => {
    if (effect.kind !== 'fills' || effect.strength === undefined) return [];
    const { strength } = effect;
    const fluid = fluidOf(job.revision, effect.fluid);
    const capacity = fluid && capacityL(job, fluid);
    if (fluid === undefined || capacity?.ok !== true) return [];
    const totalL = Math.max(0, capacity.value - (readSoFarL(job, fluid.id, 'returned') ?? 0));
    const parts = partsFor(totalL, strength);
    if (!parts.ok) return [];
    const { concentrateL, waterL } = parts.value;
    // The water is told as what is left of the rounded total, so that the parts add up on the screen too.
    const shownL = roundDecimal(concentrateL, 2);
    const percent = Number((strength * 100).toFixed(1));
    return [
      {
        fluid: fluid.id,
        strength,
        totalL,
        concentrateL,
        waterL,
        text: `${fluid.name} ${percent} %: ${litres(shownL)} concentrate + ${litres(roundDecimal(totalL, 2) - shownL)} water = ${litres(totalL)}`,
      },
    ];
  });
