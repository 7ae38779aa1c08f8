import { ok, type Result } from '../result';
import { refuse, type StatisticsError } from './error';
import { normalQuantile } from './normal';

/** A share of all, and the interval that holds the true one with the stated confidence. */
export interface Proportion {
  readonly share: number;
  readonly from: number;
  readonly to: number;
}

/**
 * So many of all, by the score interval of Wilson (1927), which stays within 0–1 and says something of none in few.
 * Errors: counts that are none, more than all, none at all, a confidence not between 0 and 1.
 */
export const proportion = (
  some: number,
  all: number,
  confidence = 0.95,
): Result<Proportion, StatisticsError> => {
  if (!(Number.isInteger(some) && Number.isInteger(all)) || some < 0 || some > all)
    return refuse('outOfDomain', 'So many of all is a count, and no more than all.');
  if (all === 0) return refuse('tooFew', 'There is nothing to take a share of.');
  if (!(confidence > 0 && confidence < 1))
    return refuse('outOfDomain', 'A confidence is between 0 and 1.');
  const z = normalQuantile((1 + confidence) / 2);
  const share = some / all;
  const wider = 1 + z ** 2 / all;
  const middle = (share + z ** 2 / (2 * all)) / wider;
  const half = (z * Math.sqrt((share * (1 - share)) / all + z ** 2 / (4 * all ** 2))) / wider;
  return ok({ share, from: Math.max(0, middle - half), to: Math.min(1, middle + half) });
};
