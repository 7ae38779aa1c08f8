export { checkDigit, parseVin, type Vin, type VinError } from './vin';
export { modelYear, type ModelYear } from './model-year';
export { parseSerial, serialText, type Serial, type SerialError } from './serial';
