import pino, { type DestinationStream, type Logger } from 'pino';
import { logLevelSchema, type LogLevel } from '../config';

/**
 * One line of JSON for each thing worth knowing, on standard output: routes by their pattern, never who or what vehicle.
 * Errors are written with their stack, since nobody else is told of them. `BAYCALL_LOG` sets the level.
 */
export const makeLog = (level: LogLevel, destination?: DestinationStream): Logger => {
  const options = {
    level,
    base: null,
    timestamp: pino.stdTimeFunctions.isoTime,
    formatters: { level: (label: string) => ({ level: label }) },
  };
  return destination === undefined ? pino(options) : pino(options, destination);
};

// A wrong word in the setting keeps the server from starting (lib/config); here it must not keep errors from the log.
export const log = makeLog(logLevelSchema.catch('info').parse(process.env.BAYCALL_LOG));
