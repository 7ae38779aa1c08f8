export { checkPin, type PinFailure } from './check-pin';
export { deviceOf, deviceSecretSchema, foremanDeviceOf, newDeviceSecret } from './device';
export { foremanFault, visitFault, writeFault, type WriteFault } from './may-write';
export { hashCost, hashPin, pinSchema, verifyPin, type HashCost } from './pin-hash';
export { beginSession, endSession, findSession, sessionMs, type Session } from './session';
