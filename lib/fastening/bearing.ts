import { err, type Result } from '../result';
import { finite, notPositive, outOfDomain, type OutOfDomain } from './domain';
import type { Thread } from './thread';

/** The ring on which a head or nut bears, mm. */
export interface Bearing {
  /** dw, outside of the bearing face. */
  readonly outerMm: number;
  /** dh, of the through hole. */
  readonly holeMm: number;
  readonly source: string;
}

/** Hexagon heads (ISO 4014/4017, dw min) over medium holes (ISO 273). M6 to M14 as in VDI 2230, the rest from memory. */
const hexagon: Readonly<Record<number, readonly [outerMm: number, holeMm: number]>> = {
  4: [5.88, 4.5],
  5: [6.88, 5.5],
  6: [8.88, 6.6],
  8: [11.63, 9],
  10: [14.63, 11],
  12: [16.63, 13.5],
  14: [19.64, 15.5],
  16: [22.49, 17.5],
  18: [25.34, 20],
  20: [28.19, 22],
  24: [33.61, 26],
};

/**
 * What a plain hexagon head of this thread bears on. For sizes without a row the mean diameter is taken as 1.25 · d
 * (1.4 · d outside, 1.1 · d hole; Shigley's collar, from memory). A flange or washer needs its own figures.
 */
export const hexagonBearing = (thread: Thread): Bearing => {
  const known = thread.system === 'metric' ? hexagon[thread.diameterMm] : undefined;
  return known === undefined
    ? {
        outerMm: 1.4 * thread.diameterMm,
        holeMm: 1.1 * thread.diameterMm,
        source: 'assumed 1.4 · d and 1.1 · d',
      }
    : { outerMm: known[0], holeMm: known[1], source: 'ISO 4014 and ISO 273 medium' };
};

/** DKm, the diameter at which the friction under the head works: (dw + dh) ÷ 2 (VDI 2230), mm. */
export const meanBearingDiameterMm = ({
  outerMm,
  holeMm,
}: Bearing): Result<number, OutOfDomain> => {
  const outside = notPositive({ 'bearing diameter': outerMm, hole: holeMm });
  if (outside) return err(outside);
  if (holeMm >= outerMm) return err(outOfDomain('hole', holeMm, 'smaller than what bears on it'));
  return finite('mean bearing diameter', (outerMm + holeMm) / 2);
};

/** Pressure under the head, MPa: F ÷ (π/4 · (dw² − dh²)) (VDI 2230). */
export const bearingStressMpa = (
  preloadN: number,
  bearing: Bearing,
): Result<number, OutOfDomain> => {
  const outside = notPositive({ preload: preloadN });
  if (outside) return err(outside);
  const mean = meanBearingDiameterMm(bearing);
  if (!mean.ok) return mean;
  const areaMm2 = (Math.PI / 4) * (bearing.outerMm ** 2 - bearing.holeMm ** 2);
  return finite('bearing stress', preloadN / areaMm2);
};
