import { z } from 'zod';

/**
 * Units are named by their UCUM code (unitsofmeasure.org), so what is stored needs no table to be exchanged.
 * Each quantity has one canonical unit; everything inside the core is in canonical units.
 */
export const quantities = [
  'torque',
  'angle',
  'length',
  'volume',
  'pressure',
  'temperature',
  'voltage',
] as const;
export const quantitySchema = z.enum(quantities);
export type Quantity = z.infer<typeof quantitySchema>;

export const units = [
  'N.m',
  'cN.m',
  '[lbf_av].[ft_i]',
  '[lbf_av].[in_i]',
  'kgf.m',
  'kgf.cm',
  'deg',
  'mm',
  '[in_i]',
  '[mil_i]',
  'L',
  'mL',
  '[qt_us]',
  '[foz_us]',
  '[pt_br]',
  'kPa',
  'bar',
  '[psi]',
  'Cel',
  '[degF]',
  'V',
  'mV',
] as const;
export const unitSchema = z.enum(units);
export type Unit = z.infer<typeof unitSchema>;

/** What a unit is: `canonical = value × factor + offset`. */
export interface UnitFacts {
  readonly quantity: Quantity;
  readonly factor: number;
  readonly offset: number;
  /** As printed on the screen. */
  readonly symbol: string;
}

const LBF_N = 4.4482216152605; // NIST SP 811: pound-force, exact
const FT_M = 0.3048; // exact
const IN_MM = 25.4; // exact
const KGF_N = 9.80665; // exact

const linear = (quantity: Quantity, factor: number, symbol: string): UnitFacts => ({
  quantity,
  factor,
  offset: 0,
  symbol,
});

export const unitFacts: Readonly<Record<Unit, UnitFacts>> = {
  'N.m': linear('torque', 1, 'N·m'),
  'cN.m': linear('torque', 0.01, 'cN·m'),
  '[lbf_av].[ft_i]': linear('torque', LBF_N * FT_M, 'lbf·ft'),
  '[lbf_av].[in_i]': linear('torque', (LBF_N * IN_MM) / 1000, 'lbf·in'),
  'kgf.m': linear('torque', KGF_N, 'kgf·m'),
  'kgf.cm': linear('torque', KGF_N / 100, 'kgf·cm'),
  deg: linear('angle', 1, '°'),
  mm: linear('length', 1, 'mm'),
  '[in_i]': linear('length', IN_MM, 'in'),
  '[mil_i]': linear('length', IN_MM / 1000, 'thou'),
  L: linear('volume', 1, 'L'),
  mL: linear('volume', 0.001, 'mL'),
  '[qt_us]': linear('volume', 0.946352946, 'US qt'),
  '[foz_us]': linear('volume', 0.0295735295625, 'US fl oz'),
  '[pt_br]': linear('volume', 0.56826125, 'imp pt'),
  kPa: linear('pressure', 1, 'kPa'),
  bar: linear('pressure', 100, 'bar'),
  '[psi]': linear('pressure', 6.894757293168361, 'psi'),
  Cel: linear('temperature', 1, '°C'),
  '[degF]': { quantity: 'temperature', factor: 5 / 9, offset: (-32 * 5) / 9, symbol: '°F' },
  V: linear('voltage', 1, 'V'),
  mV: linear('voltage', 0.001, 'mV'),
};

export const canonicalUnit: Readonly<Record<Quantity, Unit>> = {
  torque: 'N.m',
  angle: 'deg',
  length: 'mm',
  volume: 'L',
  pressure: 'kPa',
  temperature: 'Cel',
  voltage: 'V',
};

/** A value in its own unit → the canonical unit of its quantity. */
export const toCanonical = (value: number, unit: Unit): number =>
  value * unitFacts[unit].factor + unitFacts[unit].offset;

/** A canonical value → the named unit. */
export const fromCanonical = (canonical: number, unit: Unit): number =>
  (canonical - unitFacts[unit].offset) / unitFacts[unit].factor;

export const quantityOf = (unit: Unit): Quantity => unitFacts[unit].quantity;
