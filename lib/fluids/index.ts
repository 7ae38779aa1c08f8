export { capacityFor, type FluidError, type ServiceCapacity } from './capacity';
export {
  balanceFluid,
  fillLimits,
  type Fill,
  type FillLimits,
  type FluidBalance,
  type FluidMoves,
} from './balance';
export { mix, partsFor, replaceFor, type Coolant } from './mix';
