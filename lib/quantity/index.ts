export * from './unit';
export { decimalPlaces, formatDecimal, roundDecimal, type Rounding } from './decimal';
export { digitsFor, formatDifference, formatQuantity, formatWindow, type Limits } from './format';
export { parseNumber, type NumberProblem } from './parse-number';
export { parseQuantity, parseUnit, type Expected, type Measured, type ParseProblem } from './parse';
export { nameMixUp, nameMixUps, type MixUp } from './mix-up';
export {
  bothTorques,
  bothTorqueWindows,
  newtonMetres,
  poundForceFeet,
  torqueUnits,
  type BothTorques,
  type NewtonMetre,
  type PoundForceFoot,
  type TorqueUnit,
} from './torque';
