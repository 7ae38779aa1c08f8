export { checkDigit, parseVin, type Vin, type VinError } from './vin';
export { modelYear, type ModelYear } from './model-year';
export { parseSerial, type Serial, type SerialError } from './serial';
