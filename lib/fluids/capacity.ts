import { err, ok, type Result } from '../result';

export interface FluidError {
  readonly kind: 'notAVolume' | 'notAStrength' | 'outOfDomain';
  readonly message: string;
}

export const outOfDomain = (message: string): Result<never, FluidError> =>
  err({ kind: 'outOfDomain', message });

/** A volume in litres: a number, not below zero. */
export const volume = (litres: number): Result<number, FluidError> =>
  Number.isFinite(litres) && litres >= 0
    ? ok(litres)
    : err({ kind: 'notAVolume', message: 'A volume is a number of litres, not below zero.' });

/** What a service takes, litres, as the maker's sheet prints it. */
export interface ServiceCapacity {
  readonly withFilterL: number;
  /** Where the filter stays; absent: the sheet gives one figure for both. */
  readonly withoutFilterL?: number;
}

/** The capacity that counts, litres. Errors: no volumes, or less with the filter than without it. */
export const capacityFor = (
  capacity: ServiceCapacity,
  filterChanged: boolean,
): Result<number, FluidError> => {
  const withFilter = volume(capacity.withFilterL);
  if (!withFilter.ok || capacity.withoutFilterL === undefined) return withFilter;
  const without = volume(capacity.withoutFilterL);
  if (!without.ok) return without;
  return without.value > withFilter.value
    ? outOfDomain('With a new filter it takes at least as much as without.')
    : ok(filterChanged ? withFilter.value : without.value);
};
