import { err, ok, type Result } from '../result';
import { outOfDomain, volume, type FluidError } from './capacity';

/**
 * Coolant as volume and strength: the volume fraction of concentrate, 0–1.
 * Everything here takes volumes to add up. Water and glycol shrink by about one percent when mixed (from memory),
 * less than a workshop measures; the strength of what is in the vehicle is measured, not computed.
 */
export interface Coolant {
  readonly volumeL: number;
  readonly strength: number;
}

const strengthOf = (strength: number): Result<number, FluidError> =>
  Number.isFinite(strength) && strength >= 0 && strength <= 1
    ? ok(strength)
    : err({ kind: 'notAStrength', message: 'A strength is between 0 and 1 (0 and 100 %).' });

const firstError = (...checks: readonly Result<number, FluidError>[]): FluidError | undefined => {
  for (const check of checks) if (!check.ok) return check.error;
  return undefined;
};

/** Two coolants poured together. Errors: no volume, no strength, nothing poured at all. */
export const mix = (a: Coolant, b: Coolant): Result<Coolant, FluidError> => {
  const problem = firstError(
    volume(a.volumeL),
    volume(b.volumeL),
    strengthOf(a.strength),
    strengthOf(b.strength),
  );
  if (problem !== undefined) return err(problem);
  const volumeL = a.volumeL + b.volumeL;
  if (volumeL === 0 || !Number.isFinite(volumeL)) return outOfDomain('Nothing to mix.');
  // Weighted by shares, which cannot overflow as the products of large volumes can.
  const share = a.volumeL / volumeL;
  return ok({ volumeL, strength: share * a.strength + (1 - share) * b.strength });
};

/**
 * How many litres to drain and replace by `refillStrength`, so that a full system comes to `wanted`.
 * Errors: no volume or strength, or a refill that cannot lead there.
 */
export const replaceFor = (
  system: Coolant,
  refillStrength: number,
  wanted: number,
): Result<number, FluidError> => {
  const problem = firstError(
    volume(system.volumeL),
    strengthOf(system.strength),
    strengthOf(refillStrength),
    strengthOf(wanted),
  );
  if (problem !== undefined) return err(problem);
  if (wanted === system.strength) return ok(0);
  const share = (wanted - system.strength) / (refillStrength - system.strength);
  return share >= 0 && share <= 1
    ? ok(system.volumeL * share)
    : outOfDomain('Even a full refill of this strength does not lead there.');
};

/** Litres of concentrate and of water for a fill of `totalL` at a strength. Errors: no volume, no strength. */
export const partsFor = (
  totalL: number,
  strength: number,
): Result<{ readonly concentrateL: number; readonly waterL: number }, FluidError> => {
  const problem = firstError(volume(totalL), strengthOf(strength));
  return problem === undefined
    ? ok({ concentrateL: totalL * strength, waterL: totalL * (1 - strength) })
    : err(problem);
};
