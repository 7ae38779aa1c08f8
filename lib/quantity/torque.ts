import { digitsFor, formatQuantity, formatWindow, type Limits } from './format';
import { fromCanonical, toCanonical, type Unit } from './unit';

declare const unitMark: unique symbol;

/** A torque that is known to be in N·m; a plain number from a sheet may be in any unit and does not pass for one. */
export type NewtonMetre = number & { readonly [unitMark]: 'N.m' };
export type PoundForceFoot = number & { readonly [unitMark]: '[lbf_av].[ft_i]' };

export const torqueUnits = [
  'N.m',
  'cN.m',
  '[lbf_av].[ft_i]',
  '[lbf_av].[in_i]',
  'kgf.m',
  'kgf.cm',
] as const satisfies readonly Unit[];
export type TorqueUnit = (typeof torqueUnits)[number];

// The two conversions below are the only places that mark a number with its unit.

/** A torque in its own unit → N·m. */
export const newtonMetres = (value: number, unit: TorqueUnit = 'N.m'): NewtonMetre =>
  toCanonical(value, unit) as NewtonMetre;

/** N·m → lbf·ft. */
export const poundForceFeet = (torque: NewtonMetre): PoundForceFoot =>
  fromCanonical(torque, '[lbf_av].[ft_i]') as PoundForceFoot;

export interface BothTorques {
  readonly newtonMetres: string;
  readonly poundForceFeet: string;
}

/**
 * A torque as the screen shows it, in N·m and lbf·ft: "120 N·m", "89 lbf·ft".
 * The digits are those that the limits deserve (N·m), never more than the tool resolves.
 */
export const bothTorques = (
  torque: NewtonMetre,
  limits?: Limits,
  resolutionNm?: number,
): BothTorques => {
  const show = (unit: TorqueUnit): string =>
    formatQuantity(torque, unit, digitsFor(limits ?? { target: torque }, unit, resolutionNm));
  return { newtonMetres: show('N.m'), poundForceFeet: show('[lbf_av].[ft_i]') };
};

/** The accepted window (limits in N·m) in both units: "108–132 N·m", "80–97 lbf·ft". */
export const bothTorqueWindows = (limits: Limits): BothTorques => ({
  newtonMetres: formatWindow(limits, 'N.m'),
  poundForceFeet: formatWindow(limits, '[lbf_av].[ft_i]'),
});
