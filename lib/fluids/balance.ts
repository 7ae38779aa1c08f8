import { formatQuantity } from '../quantity';
import { ok, type Result } from '../result';
import { outOfDomain, volume, type FluidError } from './capacity';

/** What was done with one fluid, litres. */
export interface FluidMoves {
  /** Caught when it was drained. */
  readonly drainedL: number;
  /** Lost on the way, as estimated. */
  readonly spilledL: number;
  /** Of the drained, poured back. */
  readonly returnedL: number;
  /** From the can. */
  readonly newL: number;
}

/** What may be in after the service, litres. */
export interface FillLimits {
  readonly lowerL: number;
  readonly upperL: number;
}

/** The limits about a capacity: ± what the sheet allows. */
export const fillLimits = (capacityL: number, toleranceL: number): FillLimits => ({
  lowerL: Math.max(0, capacityL - toleranceL),
  upperL: capacityL + toleranceL,
});

export type Fill = 'under' | 'within' | 'over';

export interface FluidBalance {
  /** Drained and spilled. */
  readonly outL: number;
  /** Returned and new. */
  readonly inL: number;
  /** In less out: what the vehicle holds more than before. */
  readonly differenceL: number;
  /** Drained and not poured back: to be disposed of. */
  readonly wasteL: number;
  readonly fill: Fill;
  /** How much to add (positive) or take out (negative) to come within the limits; 0 within them. */
  readonly correctL: number;
  readonly balances: boolean;
  /** One line for each thing that is wrong. */
  readonly findings: readonly string[];
}

/** Sums of decimals: a limit reached is kept. */
const SLACK = 1e-9;

const litres = (value: number): string => formatQuantity(value, 'L');

const fillOf = (inL: number, { lowerL, upperL }: FillLimits): readonly [Fill, number] => {
  if (inL < lowerL - SLACK) return ['under', lowerL - inL];
  if (inL > upperL + SLACK) return ['over', upperL - inL];
  return ['within', 0];
};

/**
 * Balances what went in against what came out and against the fill limits; all in litres. `toleranceL` is how far in
 * and out may differ. Errors: anything that is no volume, more poured back than drained, limits crossed.
 */
export const balanceFluid = (
  moves: FluidMoves,
  limits: FillLimits,
  toleranceL: number,
): Result<FluidBalance, FluidError> => {
  const { drainedL, spilledL, returnedL, newL } = moves;
  for (const each of [
    drainedL,
    spilledL,
    returnedL,
    newL,
    limits.lowerL,
    limits.upperL,
    toleranceL,
  ]) {
    const checked = volume(each);
    if (!checked.ok) return checked;
  }
  if (returnedL > drainedL + SLACK) return outOfDomain('More was poured back than was drained.');
  if (limits.lowerL > limits.upperL)
    return outOfDomain('The lower fill limit lies above the upper.');

  const outL = drainedL + spilledL;
  const inL = returnedL + newL;
  const differenceL = inL - outL;
  if (!Number.isFinite(differenceL)) return outOfDomain('The volumes are too large.');
  const [fill, correctL] = fillOf(inL, limits);
  const balances = Math.abs(differenceL) <= toleranceL + SLACK;
  const range = `${litres(limits.lowerL)} to ${litres(limits.upperL)}`;
  return ok({
    outL,
    inL,
    differenceL,
    wasteL: Math.max(0, drainedL - returnedL),
    fill,
    correctL,
    balances,
    findings: [
      ...(fill === 'under'
        ? [`${litres(inL)} went in; ${range} is due: ${litres(correctL)} too little.`]
        : []),
      ...(fill === 'over'
        ? [`${litres(inL)} went in; ${range} is due: ${litres(-correctL)} too much.`]
        : []),
      ...(balances
        ? []
        : [
            `${litres(inL)} went in and ${litres(outL)} came out: they differ by ${litres(Math.abs(differenceL))}, ` +
              `${litres(toleranceL)} is allowed. It came in ${differenceL > 0 ? 'low' : 'overfull'}, or a volume was misread.`,
          ]),
    ],
  });
};
